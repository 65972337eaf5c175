import { hostname, networkInterfaces } from 'node:os';

/** Addresses by which other devices of the network reach this machine, IPv4 first; without those of one link only. */
export function lanAddresses(interfaces = networkInterfaces()): string[] {
  const outward = Object.values(interfaces)
    .flatMap((addresses) => addresses ?? [])
    .filter(({ internal, address }) => !internal && !/^fe80:/i.test(address));
  const of = (family: string) => outward.filter((one) => one.family === family).map(({ address }) => address);
  return [...new Set([...of('IPv4'), ...of('IPv6')])];
}

/** The names by which a network that gives names knows this machine, in lower case. */
export function lanNames(name = hostname()): string[] {
  const plain = name.toLowerCase().replace(/\.local$/, '');
  return /^[a-z0-9-]{1,63}$/.test(plain) && plain !== 'localhost' ? [plain, `${plain}.local`] : [];
}

/** An address as it stands in a `Host` header. */
export const asHost = (address: string): string => (address.includes(':') ? `[${address}]` : address);
