import { collectDefaultMetrics, Gauge, Histogram, Registry } from 'prom-client';

/** Figures of one server process for a scraper, in Prometheus' text format at /metrics. */
export interface Metrics {
  /** `outcome`: accepted, replayed, refused, keyUsedOtherwise, invalid or failed. `seconds` from request to answer. */
  command(name: string, outcome: CommandOutcome, seconds: number): void;
  /** Open sockets of the live gateway. */
  readonly sockets: { set(count: number): void };
  text(): Promise<string>;
  readonly mediaType: string;
  close(): void;
}

export type CommandOutcome = 'accepted' | 'replayed' | 'refused' | 'keyUsedOtherwise' | 'invalid' | 'failed';

export function openMetrics(): Metrics {
  const registry = new Registry();
  // Event loop lag, memory, garbage collection, open handles.
  collectDefaultMetrics({ register: registry });
  const commands = new Histogram({
    name: 'holdfast_command_seconds',
    help: 'Commands by name and outcome, from request to answer.',
    labelNames: ['command', 'outcome'],
    buckets: [0.002, 0.005, 0.01, 0.02, 0.05, 0.1, 0.25, 1, 5],
    registers: [registry],
  });
  const sockets = new Gauge({ name: 'holdfast_sockets', help: 'Open live sockets.', registers: [registry] });
  return {
    command: (command, outcome, seconds) => {
      commands.labels(command, outcome).observe(seconds);
    },
    sockets,
    text: () => registry.metrics(),
    mediaType: registry.contentType,
    close: () => {
      registry.clear();
    },
  };
}
