import { livePath } from '@holdfast/contract';
import type { ServerOptions } from 'socket.io';
import { isOwnOrigin } from './own-origin.js';

/**
 * Websocket only, so that no process needs to be the one that answered before. A bad line is noticed in 25 s. Clients
 * send a few words, so a frame is small; compressing each message for each socket costs five times the processor.
 */
export const socketOptions: Partial<ServerOptions> = {
  path: livePath,
  transports: ['websocket'],
  allowUpgrades: false,
  serveClient: false,
  maxHttpBufferSize: 65_536,
  pingInterval: 15_000,
  pingTimeout: 10_000,
  connectTimeout: 10_000,
  perMessageDeflate: false,
  httpCompression: false,
  allowRequest: (request, answer) => {
    answer(null, isOwnOrigin(request));
  },
};
