import type { IncomingMessage, RequestListener } from 'node:http';
import { createServer, type Server } from 'node:https';
import type { AddressInfo } from 'node:net';
import type { PairedDevice } from '../../shared/settings.ts';
import { asHost, lanNames } from './lan-addresses.ts';
import { type OwnCertificate, ownCertificate } from './own-certificate.ts';
import type { PairedDevices } from './paired-devices.ts';
import { PairingCode } from './pairing-code.ts';

/** The prefix makes browsers insist on Secure, on Path=/ and on no Domain (RFC 6265bis, section 4.1.3.2). */
const COOKIE = '__Host-quiltside-device';
const COOKIE_LASTS_S = 365 * 86_400;
const OWN = new Set(['127.0.0.1', '::1', '::ffff:127.0.0.1']);

/** A request over the loopback: whoever makes it sits at this machine. */
export const isThisMachine = (request: IncomingMessage): boolean =>
  OWN.has(request.socket.remoteAddress ?? '');

/** The way in for phones and tablets: HTTPS on the network, for devices that were let in. */
export class LanDoor {
  readonly server: Server;
  readonly code = new PairingCode();
  port = 0;

  private constructor(
    readonly addresses: readonly string[],
    readonly certificate: OwnCertificate,
    readonly devices: PairedDevices,
    answer: RequestListener,
  ) {
    this.server = createServer({ key: certificate.key, cert: certificate.cert }, answer);
    this.server.requestTimeout = 15 * 60_000;
    this.server.headersTimeout = 20_000;
    this.server.keepAliveTimeout = 10_000;
    this.server.maxConnections = 200;
  }

  static async open(
    dataFolder: string,
    addresses: readonly string[],
    devices: PairedDevices,
    answer: RequestListener,
  ): Promise<LanDoor> {
    const certificate = await ownCertificate(dataFolder, { addresses, names: lanNames(), now: new Date() });
    return new LanDoor(addresses, certificate, devices, answer);
  }

  /** What may stand in `Host` besides the loopback's names. */
  static hosts(addresses: readonly string[]): string[] {
    return [...addresses.map(asHost), ...lanNames()];
  }

  /** The addresses to open on another device. */
  get links(): string[] {
    return this.addresses.map((address) => `https://${asHost(address)}:${this.port}`);
  }

  async listen(port: number): Promise<void> {
    await new Promise<void>((resolve, reject) => {
      this.server.once('error', reject);
      this.server.listen(port, () => {
        this.server.off('error', reject);
        resolve();
      });
    });
    this.port = (this.server.address() as AddressInfo).port;
  }

  /** Who asks: this machine, a device that was let in, or nobody known. */
  whoIs(request: IncomingMessage): 'machine' | PairedDevice | undefined {
    if (isThisMachine(request)) return 'machine';
    const token = new RegExp(`(?:^|;\\s*)${COOKIE}=([\\w-]{43})(?:;|$)`).exec(
      request.headers.cookie ?? '',
    )?.[1];
    return token === undefined ? undefined : this.devices.find(token, new Date());
  }

  static cookie(token: string): string {
    return `${COOKIE}=${token}; Path=/; Max-Age=${COOKIE_LASTS_S}; HttpOnly; Secure; SameSite=Strict`;
  }

  async close(): Promise<void> {
    if (!this.server.listening) return;
    const closed = new Promise<void>((resolve) => this.server.close(() => resolve()));
    this.server.closeAllConnections();
    await closed;
  }
}

export const NOT_LET_IN =
  'This device is not let in yet. Enter the six digits that the computer shows: Settings, Phones and tablets.';
