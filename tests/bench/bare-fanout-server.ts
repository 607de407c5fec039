/**
 * The baseline of `fanout`: a bare `ws` server that is woken by LISTEN, reads the row once and sends the same bytes to
 * every client. Run as a process of its own.
 */
import pg from 'pg';
import { WebSocketServer } from 'ws';

const url = process.env['BARE_URL'];
const pool = new pg.Pool({ connectionString: url, max: 2 });
await pool.query('create table if not exists feed (seq bigint primary key, text text not null)');
const sockets = new WebSocketServer({ port: Number(process.env['PORT']), host: '127.0.0.1', perMessageDeflate: false });
const listener = new pg.Client({ connectionString: url });
await listener.connect();
let last = 0;
listener.on('notification', () => {
  void pool
    .query<{ seq: string; text: string }>({
      name: 'after',
      text: 'select seq, text from feed where seq > $1 order by seq',
      values: [last],
    })
    .then(({ rows }) => {
      for (const row of rows) {
        last = Math.max(last, Number(row.seq));
        for (const socket of sockets.clients) socket.send(row.text);
      }
    });
});
await listener.query('listen feed');
process.stdout.write('ready\n');
