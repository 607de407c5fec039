/**
 * Several prepared statements as one message to PostgreSQL and one answer from it: sent in one write, with one
 * synchronisation behind the last of them (Extended Query of the protocol). As queries of their own, even in the pipeline,
 * each of them is answered and flushed by itself, which took more time on both sides than the statements did.
 *
 * As the protocol has it, the first that fails is the only one that is told, and those behind it are not run.
 */
import type { Socket } from 'node:net';
import pg from 'pg';

export interface Statement {
  /** One text for each name. It is parsed once on each connection. */
  readonly name: string;
  readonly text: string;
  readonly values: readonly unknown[];
  /** It gives no rows that anybody reads, so nobody asks what they would look like. */
  readonly silent?: true;
}

/** What of pg's connection is used here; its declaration leaves it out. */
interface Wire {
  readonly stream: Socket;
  parse(statement: { name: string; text: string }): void;
  bind(portal: { statement: string; values: readonly (string | null)[] }): void;
  describe(portal: { type: 'P' }): void;
  execute(portal: object): void;
  sync(): void;
}

interface Prepared {
  /** Name on the server; it may be fresh, then the text goes along. */
  readonly statement: string;
  readonly text: string | null;
  readonly values: readonly (string | null)[];
  readonly silent: boolean;
}

/** What each connection has parsed, and under which names. */
class Parsed {
  private static readonly of = new WeakMap<pg.ClientBase, Parsed>();
  private readonly names = new Set<string>();
  private readonly tries = new Map<string, number>();

  static on(client: pg.ClientBase): Parsed {
    const known = Parsed.of.get(client) ?? new Parsed();
    Parsed.of.set(client, known);
    return known;
  }

  prepare({ name, text, values, silent }: Statement): Prepared {
    const parsed = this.names.has(name);
    this.names.add(name);
    const statement = `burst-${name}-${String(this.tries.get(name) ?? 0)}`;
    return { statement, text: parsed ? null : text, values: values.map(textOf), silent: silent === true };
  }

  /** Of statements that were sent with their text in a burst that failed it is not known whether they were parsed. */
  forget(statements: readonly Statement[], prepared: readonly Prepared[]): void {
    statements.forEach(({ name }, at) => {
      if (prepared[at]?.text === null || !this.names.delete(name)) return;
      this.tries.set(name, (this.tries.get(name) ?? 0) + 1);
    });
  }
}

/** A value as PostgreSQL reads it from text. */
function textOf(value: unknown): string | null {
  if (value === null || value === undefined) return null;
  if (typeof value === 'string') return value;
  if (Array.isArray(value)) return `{${value.map(elementOf).join(',')}}`;
  return typeof value === 'number' || typeof value === 'boolean' ? String(value) : JSON.stringify(value);
}

function elementOf(value: unknown): string {
  const text = textOf(value);
  return text === null ? 'NULL' : `"${text.replace(/["\\]/g, '\\$&')}"`;
}

/** pg's own query gathers the results of several statements; only what is sent for it is another thing. */
class Burst extends pg.Query {
  constructor(
    private readonly statements: readonly Prepared[],
    readonly callback: (failure: Error | null, results: pg.QueryResult | pg.QueryResult[]) => void,
  ) {
    super('burst');
  }

  requiresPreparation(): boolean {
    return true;
  }

  /** Called by `submit` of pg's query between cork and uncork. */
  prepare(wire: Wire): void {
    for (const { statement, text, values, silent } of this.statements) {
      if (text !== null) wire.parse({ name: statement, text });
      wire.bind({ statement, values });
      if (!silent) wire.describe({ type: 'P' });
      wire.execute({});
    }
    wire.sync();
  }
}

/** The results in the order of the statements; rejects with the first failure. */
export async function burst(client: pg.ClientBase, statements: readonly Statement[]): Promise<pg.QueryResult[]> {
  const parsed = Parsed.on(client);
  const prepared = statements.map((statement) => parsed.prepare(statement));
  try {
    return await new Promise((resolve, reject) => {
      client.query(
        new Burst(prepared, (failure, results) => {
          if (failure) reject(failure);
          else resolve(Array.isArray(results) ? results : [results]);
        }),
      );
    });
  } catch (failure) {
    parsed.forget(statements, prepared);
    throw failure;
  }
}
