import { Module } from '@nestjs/common';
import type { Sessions } from '../auth/sessions.js';
import type { Database } from '../database/pools.js';
import type { LogReader, Wake } from '../engine/ports.js';
import type { Log } from '../log.js';
import type { Metrics } from '../metrics.js';
import { DATABASE, LOG, LOG_READER, METRICS, SESSIONS, WAKES } from '../providers.js';
import { makeLogNotices } from '../read/log-notices.js';
import { makePollChanges } from './changes-poll.js';
import { makeFeeds, type Feeds } from './feeds.js';
import { LiveGateway } from './live.gateway.js';
import { FEEDS, LIVE_SOCKETS, POLL_CHANGES } from './live-providers.js';
import { LiveSockets } from './live-sockets.js';

const failedBy = (log: Log) => (failure: unknown) => {
  log.warn({ failure }, 'The live channel could not read the log; it tries again.');
};

/** The live channel, on the parts that start.ts made. */
@Module({
  providers: [
    LiveGateway,
    {
      provide: FEEDS,
      inject: [DATABASE, LOG_READER, WAKES, LOG],
      useFactory: (database: Database, reader: LogReader, wakes: Wake[], log: Log): Feeds => {
        const feeds = makeFeeds({ reader, notices: makeLogNotices(database), failed: failedBy(log) });
        wakes.push(feeds.wake);
        return feeds;
      },
    },
    {
      provide: LIVE_SOCKETS,
      inject: [FEEDS, LOG_READER, SESSIONS, METRICS, LOG],
      useFactory: (feeds: Feeds, reader: LogReader, sessions: Sessions, metrics: Metrics, log: Log) =>
        new LiveSockets({
          feeds,
          reader,
          sessions,
          counted: (count) => {
            metrics.sockets.set(count);
          },
          failed: failedBy(log),
        }),
    },
    {
      provide: POLL_CHANGES,
      inject: [FEEDS, LOG_READER],
      useFactory: (feeds: Feeds, reader: LogReader) => makePollChanges({ feeds, reader }),
    },
  ],
  exports: [POLL_CHANGES],
})
export class LiveModule {}
