import { Inject, type BeforeApplicationShutdown } from '@nestjs/common';
import { WebSocketGateway, type OnGatewayInit } from '@nestjs/websockets';
import type { Server } from 'socket.io';
import type { Feeds } from './feeds.js';
import { FEEDS, LIVE_SOCKETS } from './live-providers.js';
import type { LiveSockets } from './live-sockets.js';
import { socketOptions } from './socket-options.js';

/** Where Nest's server of sockets and ours meet; nothing is said on a socket that would need a pipe or a filter of Nest. */
@WebSocketGateway(socketOptions)
export class LiveGateway implements OnGatewayInit<Server>, BeforeApplicationShutdown {
  constructor(
    @Inject(LIVE_SOCKETS) private readonly live: LiveSockets,
    @Inject(FEEDS) private readonly feeds: Feeds,
  ) {}

  async afterInit(io: Server): Promise<void> {
    this.live.attach(io);
    await this.feeds.start();
  }

  beforeApplicationShutdown(): void {
    this.live.close();
    this.feeds.stop();
  }
}
