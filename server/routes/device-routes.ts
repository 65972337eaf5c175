import type { FastifyInstance } from 'fastify';
import { z } from 'zod';
import type { Pairing } from '../../shared/settings.ts';
import { isThisMachine, LanDoor, NOT_LET_IN } from '../lan/lan-door.ts';
import type { PairedDevices } from '../lan/paired-devices.ts';
import { parseInput } from '../plugins/answer-errors.ts';
import { Refusal } from '../store/quilt-store.ts';

export const PairingAttempt = z.strictObject({
  code: z.string().regex(/^\d{6}$/, 'the code has six digits'),
  name: z
    .string()
    .trim()
    .min(1)
    .max(60)
    .regex(/^[^\u0000-\u001f\u007f-\u009f]*$/, 'a name is one line of text'),
});
type WithId = { Params: { id: string } };

/**
 * Who may come in from the network, and the pairing that lets a device in. Where `door` is given, everything under /api is
 * closed to devices that were not let in; the page itself holds nothing of hers and is served to all.
 */
export function deviceRoutes(
  app: FastifyInstance,
  devices: PairedDevices,
  door: LanDoor | undefined,
  onSentAway: (id: string) => void,
): void {
  if (door) {
    app.addHook('onRequest', async (request) => {
      // The router's own word for what is asked, so that no spelling of an address gets past.
      const route = request.routeOptions.url;
      if (!route?.startsWith('/api/') || (request.method === 'POST' && route === '/api/pairing')) return;
      if (!door.whoIs(request.raw)) throw new Refusal(NOT_LET_IN, 401);
    });
  }

  const describe = (): Pairing => {
    if (!door) return { on: false };
    return { on: true, links: door.links, state: door.code.state, ...door.code.shown };
  };
  const fromHere = (request: { raw: Parameters<typeof isThisMachine>[0] }): void => {
    if (!isThisMachine(request.raw)) {
      throw new Refusal('The code is shown on the computer itself only.', 403);
    }
  };

  app.get('/api/pairing', async (request) => {
    fromHere(request);
    return describe();
  });
  app.post('/api/pairing/renew', async (request) => {
    fromHere(request);
    door?.code.renew();
    return describe();
  });
  app.post(
    '/api/pairing',
    { config: { rateLimit: { max: 30, timeWindow: '1 minute' } } },
    async (request, reply) => {
      const { code, name } = parseInput(PairingAttempt, request.body);
      if (!door) throw new Refusal('Start with npm start -- --lan to let other devices in.', 409);
      const why = door.code.whyNot(code);
      if (why !== undefined) throw new Refusal(why, 403, 'code');
      const { device, token } = await devices.add(name, new Date());
      return reply.code(201).header('set-cookie', LanDoor.cookie(token)).send(device);
    },
  );

  app.get('/api/devices', async () => devices.list());
  app.delete<WithId>('/api/devices/:id', async ({ params }) => {
    if (!(await devices.sendAway(params.id))) throw new Refusal('There is no such device.', 404);
    onSentAway(params.id);
    return devices.list();
  });
}
