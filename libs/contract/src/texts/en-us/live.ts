/** The line to the server. */
export const live = {
  'live.notSent': 'The server could not be reached, so this is not recorded. Check the Wi-Fi and try again.',
  'live.goThere': 'Go there',
  'live.unreachable': 'The server cannot be reached. This page keeps trying.',
} as const;
