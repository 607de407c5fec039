import { PrismaPg } from '@prisma/adapter-pg';
import type pg from 'pg';
import { PrismaClient } from '../../generated/prisma/client.js';

/**
 * Prisma's client for what is not hot: the schema `directory` (shops, accounts, memberships). It works on the pool it
 * is given, so as that pool's role, and leaves the pool open when it disconnects. Shop data never goes through it: its
 * transactions and those of the write path are different ones.
 */
export function directoryClient(pool: pg.Pool): PrismaClient {
  return new PrismaClient({ adapter: new PrismaPg(pool) });
}
