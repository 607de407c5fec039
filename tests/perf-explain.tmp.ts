import { gzipSync } from 'node:zlib';
import { randomUUID } from 'node:crypto';
import { startTestServer, testServerVariable } from './kit/test-server.js';
import { freshDatabase } from './kit/database.js';
import { makeReads } from '../apps/server/src/read/reads.js';
import { withShop } from '../apps/server/src/database/pools.js';

const started = await startTestServer();
process.env[testServerVariable] = JSON.stringify(started.server);
const db = await freshDatabase();
const time = async (name: string, n: number, f: () => Promise<unknown>) => {
  for (let i = 0; i < 3; i++) await f();
  const t: number[] = [];
  for (let i = 0; i < n; i++) { const a = performance.now(); await f(); t.push(performance.now() - a); }
  t.sort((x, y) => x - y);
  console.log(name, 'p50', t[n >> 1]!.toFixed(2), 'min', t[0]!.toFixed(2));
  return t[n >> 1]!;
};
try {
  const shop = randomUUID();
  const su = await db.superuser.connect(); (globalThis as any).su = su;
  const q = (text: string) => su.query(text.replaceAll(':shop', `'${shop}'::uuid`));
  await q(`set session_replication_role = replica`);
  await q(`insert into head (shop_id, epoch, last_at, seq, clock_real, clock_shown, clock_rate) values (:shop, gen_random_uuid(), now(), 1, now(), '2029-12-31 17:30Z', 0)`);
  await q(`insert into shop (shop_id,id,version,name,zone,currency,units,locale) values (:shop,:shop,1,'S','Europe/London','GBP','metric','en-GB')`);
  await q(`insert into shop_setting (shop_id,id,version,valid_from,grace_minutes,tolerance_percent,floor_records_go_aheads) values (:shop,gen_random_uuid(),1,'2000-01-01',15,10,true)`);
  const week = (v: string[][]) => JSON.stringify(Object.fromEntries(['mon','tue','wed','thu','fri','sat','sun'].map((d) => [d, d === 'sun' ? [] : v])));
  const hours = week([['08:00', '18:00']]); const brk = week([['12:00', '12:30']]);
  await q(`insert into opening_hours (shop_id,id,version,valid_from,week,breaks) values (:shop,gen_random_uuid(),1,'2000-01-01','${hours}','${brk}')`);
  await q(`insert into person (shop_id,id,version,name,roles,active) select :shop, gen_random_uuid(),1,'Person '||i,'["technician"]',true from generate_series(1,10) i`);
  await q(`insert into person_hours (shop_id,id,version,person_id,valid_from,week,breaks) select :shop, gen_random_uuid(),1,id,'2000-01-01','${hours}','${brk}' from person where shop_id=:shop`);
  await q(`insert into bay (shop_id,id,version,name,position) select :shop, gen_random_uuid(),1,'Bay '||i,i from generate_series(1,10) i`);
  await q(`insert into bay_spec (shop_id,id,version,bay_id,valid_from,spots,equipment,capacity_unit,out_of_use) select :shop, gen_random_uuid(),1,id,'2000-01-01',1,'[]','kg',false from bay where shop_id=:shop`);
  await q(`create function pg_temp.u() returns uuid language sql volatile as 'select uuidv7(random() * interval ''30 days'')'`); await q(`set search_path = public, pg_temp`);
  await q(`create temp table j as select pg_temp.u() id, pg_temp.u() vid, pg_temp.u() cid, b.id bay, p.id person, d, (row_number() over ())::int n, pg_temp.u() l1, pg_temp.u() l2, pg_temp.u() l3, pg_temp.u() h, timestamptz '2029-01-01 08:00Z' + d * interval '1 day' + (b.position * interval '3 minutes') t0 from bay b join (select id, row_number() over () rn from person where shop_id=:shop) p on p.rn = b.position, generate_series(0,364) d where b.shop_id=:shop and extract(dow from timestamptz '2029-01-01 08:00Z' + d * interval '1 day') <> 0`);
  const rec = `shop_id,id,version,recorded_at,effective_at,by_id`; const recv = (id = 'pg_temp.u()', t = 't0') => `:shop,${id},1,${t},${t},person`;
  await q(`insert into customer (shop_id,id,version,name,name_key) select :shop, cid,1,'Customer Name '||n,'CUSTOMER'||n from j`);
  await q(`insert into contact (shop_id,id,version,customer_id,name,phone,may_bring,may_agree_any,may_collect) select :shop, gen_random_uuid(),1,cid,'Customer Name '||n,'01632 960001',true,false,true from j`);
  await q(`insert into vehicle (shop_id,id,version,customer_id,plate,plate_key,description,kind,drive,rolls,may_be_driven) select :shop,vid,1,cid,'AB '||n,'AB'||n,'Panel van, white, long wheelbase','light','combustion',true,true from j`);
  // the last 300 jobs are still open
  await q(`insert into job (${rec},number,vehicle_id,customer_id,kind,checked_in_at,promised_at,waits_here,key_tag,odometer_unit,stored_here,ended_at) select ${recv('id')},n,vid,cid,'normal',t0,t0+interval '9 hours',false,'K'||n,'km',false, case when d < 334 then t0 + interval '9 hours' end from j`);
  await q(`insert into concern (${rec},job_id,position,words) select ${recv()},id,1,'Knocks over bumps at low speed' from j`);
  for (const [i, l] of ['l1', 'l2', 'l3'].entries()) {
    await q(`insert into work_line (${rec},job_id,vehicle_id,position,title,book_minutes,payer,progress,go_ahead,started_at,ended_at) select ${recv(l)},id,vid,${i + 1},'Replace the left front drop link',60,'customer','done','given',t0,t0+interval '${3 + i * 2} hours' from j`);
    await q(`insert into go_ahead (${rec},job_id,line_id,answer,by_name,how) select ${recv()},id,${l},'given','Somebody','telephone' from j`);
  }
  await q(`insert into spot_use (${rec},job_id,vehicle_id,bay_id,spot,kind,from_at,to_at) select ${recv()},id,vid,bay,1,'stands',t0,t0+interval '9 hours' from j`);
  await q(`insert into place (${rec},job_id,vehicle_id,kind,bay_id,spot,moved_how,from_at,to_at) select ${recv()},id,vid,'bay',bay,1,'rolled',t0,t0+interval '9 hours' from j`);
  await q(`insert into clock (${rec},job_id,line_id,person_id,bench,from_at,to_at) select ${recv()},id,l1,person,false,t0+interval '30 minutes',t0+interval '3 hours' from j union all select ${recv()},id,l2,person,false,t0+interval '5 hours',t0+interval '7 hours' from j`);
  await q(`insert into hold (${rec},job_id,vehicle_id,reason,from_at,to_at) select ${recv('h')},id,vid,'parts',t0+interval '3 hours',t0+interval '5 hours' from j`);
  await q(`insert into hold_line (shop_id,id,version,hold_id,job_id,line_id) select :shop,gen_random_uuid(),1,h,id,l2 from j`);
  await q(`insert into part_line (${rec},vehicle_id,job_id,line_id,description,quantity,unit,needed,source,state,here,fitted) select ${recv()},vid,id,l2,'Drop link left','1','piece','beforeRefit','supplier','ordered',0,0 from j, generate_series(1,2)`);
  await q('set session_replication_role = origin'); await su.query('vacuum analyze');
  const { rows } = await q(`select count(*) filter (where ended_at is null) open, count(*) from job where shop_id=:shop`);
  console.log(rows);
  const ex = async (text: string, values: unknown[]) => {
    const r = await withShop(db.app, shop, (c) => c.query({ text: 'explain (analyze, costs off, timing on) ' + text, values }));
    return r.rows.map((x: any) => x['QUERY PLAN']).join('\n');
  };
  const src = (await import('../apps/server/src/read/bay-time-rows.js')) as any;
  const capture = async (f: (c: any) => Promise<unknown>) => { let got: any; await f({ query: async (x: any) => { got ??= x; return { rows: [] }; } }).catch(() => {}); return got; };
  const w = { from: Date.parse('2029-01-01T00:00Z'), to: Date.parse('2029-12-31T23:59Z') };
  const st = await capture((c) => src.jobsInWindow(c, shop, w));
  console.log(await ex(st.text, st.values));
} catch (e) { console.error(e); process.exitCode = 1;
} finally {
  try { (globalThis as any).su.release(true); } catch {}
  await db.drop();
  await started.stop();
}
