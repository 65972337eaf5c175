// Loaded before anything else, in the server and in every process that it starts: any way out of this machine throws,
// and is written down. Plain JavaScript, as it comes before the loader of TypeScript.
import dgram from 'node:dgram';
import dns from 'node:dns';
import { appendFileSync } from 'node:fs';
import { syncBuiltinESMExports } from 'node:module';
import net from 'node:net';

const LOG = process.env.NETWORK_ATTEMPTS;
const LOOPBACK = /^(127(\.\d+){3}|::1|localhost|)$/;

function refuse(what) {
  appendFileSync(LOG, `${what}\n`);
  throw new Error(`The network is denied here: ${what}`);
}

const { connect } = net.Socket.prototype;
net.Socket.prototype.connect = function (...given) {
  // Node hands on its own normalised arguments as one array.
  const [first] = Array.isArray(given[0]) ? given[0] : given;
  const options = typeof first === 'object' ? first : { port: first, host: given[1] };
  // `path` is a socket of this machine's file system; http gives null where there is none.
  const isLocal = typeof options.path === 'string' || LOOPBACK.test(String(options.host ?? ''));
  if (!isLocal) refuse(`connect ${options.host}:${options.port}`);
  return connect.apply(this, given);
};
const { lookup } = dns;
dns.lookup = (name, ...rest) => (LOOPBACK.test(name) ? lookup(name, ...rest) : refuse(`lookup ${name}`));
dns.promises.lookup = async (name) => refuse(`lookup ${name}`);
for (const ask of Object.keys(dns).filter((name) => /^(resolve|reverse)/.test(name))) {
  dns[ask] = (name) => refuse(`${ask} ${name}`);
  if (dns.promises[ask]) dns.promises[ask] = async (name) => refuse(`${ask} ${name}`);
}
for (const way of ['send', 'connect']) {
  dgram.Socket.prototype[way] = (...given) =>
    refuse(`datagram ${way} ${given.filter((one) => typeof one !== 'object').join(' ')}`);
}
syncBuiltinESMExports();
// That this was loaded at all.
appendFileSync(LOG, `ready ${process.argv[1] ?? ''}\n`);
