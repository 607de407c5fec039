import { shopMoreEnGb } from '../en-gb/shop-more.js';

export const shopMoreEnUs = { ...shopMoreEnGb } as const;
