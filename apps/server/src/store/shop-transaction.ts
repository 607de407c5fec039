import type pg from 'pg';

const uuid = /^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/i;

/**
 * One transaction that may write and sees the rows of `shopId` (a UUID, else refused) alone. For rows that are no part
 * of the shop's log: sessions, uploads, the head of a new shop, the clock of a demo. All else is written by the engine.
 */
export async function inShop<T>(
  pool: pg.Pool,
  shopId: string,
  work: (client: pg.ClientBase) => Promise<T>,
): Promise<T> {
  if (!uuid.test(shopId)) throw new RangeError('A shop is named by its UUID.');
  const client = await pool.connect();
  try {
    // One round trip; the UUID was checked above, so it needs no parameter.
    await client.query(`begin; select set_config('app.shop_id', '${shopId}', true)`);
    const result = await work(client);
    await client.query('commit');
    client.release();
    return result;
  } catch (failure) {
    // A connection whose rollback fails is closed: nobody gets it again.
    await client.query('rollback').then(
      () => client.release(),
      () => client.release(true),
    );
    throw failure;
  }
}
