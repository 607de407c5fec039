/** What the server answers when a request cannot be taken, before any rule of the shop is asked. */
export const problemsEnUs = {
  'problem.body.malformed': 'The server could not read what was sent: it is not well-formed JSON.',
  'problem.body.notJson': 'This address takes {type} only.',
  'problem.body.tooLarge': 'That is too much to send at once: the limit here is {limit}.',
  'problem.body.invalid': 'Something in the entry does not fit; each place is named below. Nothing was recorded.',
  'problem.query.invalid': 'Something in the address does not fit; each place is named below.',
  'problem.request.malformed': 'The server could not make sense of this request.',
  'problem.key.missing':
    'Every command carries the header Idempotency-Key with a UUID of its own. Nothing was recorded.',
  'problem.key.usedOtherwise':
    'This key was sent before with something else. What was sent first stands; send the new entry with a key of its own.',
  'problem.header.invalid': 'The header {header} cannot be read.',
  'problem.contract.reload': 'Holdfast has been updated. Reload this page, then go on; what waits to be sent is kept.',
  'problem.path.unknown': 'There is nothing at this address.',
  'problem.command.unknown': 'There is no command of this name.',
  'problem.method.notAllowed': 'This address does not take {method}.',
  'problem.session.missing': 'Nobody is signed in on this device, or the sign-in has run out. Sign in again.',
  'problem.session.notMatching':
    'Shop, name and password do not belong together, or this sign-in is closed. Check all three; the owner can set a new password.',
  'problem.session.wait': 'Too many attempts. Try again in {seconds, plural, one {# second} other {# seconds}}.',
  'problem.session.needsHttps':
    'Passwords are not sent over a plain connection. On the computer that runs Holdfast, run "npm run tls", start it with the two settings that it prints, and open the address that begins with https.',
  'problem.site.foreign': 'This request came from a page of another site and was not carried out.',
  'problem.read.mayNot': 'Your roles do not read this. The owner sets roles under Shop.',
  'problem.role.mayNot': 'Your roles do not do this. The owner sets roles under Shop.',
  'problem.setUp.codeWrong':
    'This is not the set-up code. It stands where Holdfast was started, in the line "set-up code".',
  'problem.setUp.codeSpent': 'The set-up code was tried too often. Start Holdfast again for a new one.',
  'problem.setUp.notAwaited': 'This server has its shop already. Sign in, or ask its owner for a sign-in.',
  'problem.setUp.nameTaken': 'There is a shop of this name on this server. Give yours a name that tells the two apart.',
  'problem.upload.missing': 'No photo was sent. One file goes into one upload.',
  'problem.upload.notAPhoto': 'This file is not a JPEG, PNG or WebP photo that can be read.',
  'problem.photo.unknown': 'There is no such photo in this shop.',
  'problem.demo.absent': 'This server runs without the demo.',
  'problem.clock.real':
    'This shop keeps real time; only the demo and shops set up for trying have a clock that can be set.',
  'problem.clock.behind': 'The clock of a shop does not run backwards: its last entry was recorded later than that.',
  'problem.server.busy': 'There is too much to do at once. Try again in a moment.',
  'problem.server.stopping':
    'Holdfast is being stopped or restarted. Try again in a moment; what waits to be sent is kept.',
  'problem.server.fault':
    'Something went wrong in the server, and nothing was recorded. Try again; if it stays so, tell whoever looks after it the trace {traceId}.',
  'problem.refusedOtherwise': 'A rule of the shop refuses this ({code}).',
  'password.tooShort': 'Take at least {least} signs; a short sentence is easy to remember.',
  'password.tooLong': 'Take at most {most} signs.',
  'password.common':
    'This is among the first that somebody guessing would try. Take something only you would think of.',
  'password.context': 'It is little more than the name of the person, the shop or the program. Take something else.',
} as const;
