import { X509Certificate } from 'node:crypto';
import { mkdir, readFile, rename, writeFile } from 'node:fs/promises';
import { join } from 'node:path';

const DAY_MS = 86_400_000;
/** Browsers refuse certificates of more than 398 days (CA/Browser Forum ballot SC31, from memory). */
const LASTS_DAYS = 390;
const RENEWED_BEFORE_DAYS = 14;

/** In PEM. `fingerprint`: SHA-256 over the certificate, in pairs of hex digits, as browsers show it. */
export type OwnCertificate = { key: string; cert: string; fingerprint: string };

/**
 * The certificate of this machine, signed by itself and kept in `lan/` of the data folder, readable by its owner only.
 * Made on first use, and anew when it is about to run out or does not name an address that the machine has now.
 */
export async function ownCertificate(
  dataFolder: string,
  { addresses, names, now }: { addresses: readonly string[]; names: readonly string[]; now: Date },
): Promise<OwnCertificate> {
  const folder = join(dataFolder, 'lan');
  const [keyPath, certPath] = [join(folder, 'key.pem'), join(folder, 'certificate.pem')];
  const kept = await Promise.all([readFile(keyPath, 'utf8'), readFile(certPath, 'utf8')]).catch(
    () => undefined,
  );
  if (kept) {
    const [key, cert] = kept;
    const known = readCertificate(cert);
    if (known && serves(known, addresses, now)) return { key, cert, fingerprint: known.fingerprint256 };
  }
  // Once in a long while, so it is not loaded at every start.
  const { generate } = await import('selfsigned');
  const made = await generate([{ name: 'commonName', value: 'Quiltside on this machine' }], {
    keyType: 'ec',
    curve: 'P-256',
    algorithm: 'sha256',
    notBeforeDate: new Date(now.getTime() - DAY_MS),
    notAfterDate: new Date(now.getTime() + LASTS_DAYS * DAY_MS),
    extensions: [
      { name: 'basicConstraints', cA: false, critical: true },
      { name: 'keyUsage', digitalSignature: true, critical: true },
      { name: 'extKeyUsage', serverAuth: true },
      {
        name: 'subjectAltName',
        altNames: [
          ...['localhost', ...names].map((value) => ({ type: 2 as const, value })),
          ...['127.0.0.1', '::1', ...addresses].map((ip) => ({ type: 7 as const, ip })),
        ],
      },
    ],
  });
  await mkdir(folder, { recursive: true, mode: 0o700 });
  for (const [path, text] of [
    [keyPath, made.private],
    [certPath, made.cert],
  ] as const) {
    await writeFile(`${path}.part`, text, { mode: 0o600 });
    await rename(`${path}.part`, path);
  }
  return { key: made.private, cert: made.cert, fingerprint: new X509Certificate(made.cert).fingerprint256 };
}

function readCertificate(cert: string): X509Certificate | undefined {
  try {
    return new X509Certificate(cert);
  } catch {
    return undefined;
  }
}

function serves(certificate: X509Certificate, addresses: readonly string[], now: Date): boolean {
  const leftMs = Date.parse(certificate.validTo) - now.getTime();
  return (
    leftMs > RENEWED_BEFORE_DAYS * DAY_MS && addresses.every((ip) => certificate.checkIP(ip) !== undefined)
  );
}
