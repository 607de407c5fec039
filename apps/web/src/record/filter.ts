/** Which part of the log is looked at: ids, the name of a command, and days of the shop, both included. */
export type Filter = {
  readonly person?: string | undefined;
  readonly command?: string | undefined;
  readonly job?: string | undefined;
  readonly vehicle?: string | undefined;
  readonly from?: string | undefined;
  readonly to?: string | undefined;
};

/** As it stands in the address of a read, to be put behind other parameters. */
export const filterQuery = (filter: Filter): string =>
  Object.entries(filter)
    .filter((part): part is [string, string] => part[1] !== undefined && part[1] !== '')
    .map(([name, value]) => `&${name}=${encodeURIComponent(value)}`)
    .join('');
