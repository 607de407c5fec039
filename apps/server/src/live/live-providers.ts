/** Names under which Nest hands out the parts of the live channel. */
export const FEEDS = Symbol('Feeds');
export const LIVE_SOCKETS = Symbol('LiveSockets');
export const POLL_CHANGES = Symbol('PollChanges');
