import { configOrExit } from '../config.js';
import { isName, makeCertificates, namesOfThisMachine } from './certificates.js';

/** EX_USAGE of sysexits.h. */
const exitStatusOfBadUse = 64;

const config = configOrExit();
const given = process.argv.slice(2);
const wrong = given.filter((name) => !isName(name));
if (wrong.length > 0) {
  process.stderr.write(
    `A certificate can be made for names such as shop.example and for addresses, not for ${wrong.join(', ')}.\n`,
  );
  process.exit(exitStatusOfBadUse);
}
const made = await makeCertificates(config.dataDir, [...namesOfThisMachine(), ...given], new Date());
process.stdout.write(`A certificate for ${made.names.join(', ')} was made; it holds for 13 months.
${
  made.authorityIsNew
    ? "The shop's authority is new: each device must install it once, from /authority on the server."
    : "It is signed by the shop's authority that the devices know already."
}
SHA-256 fingerprint of the authority (compare it on each device before installing):
  ${made.fingerprint}

Start the server with these settings:
  TLS_CERT=${made.certFile}
  TLS_KEY=${made.keyFile}
and with HOST=0.0.0.0 so that other devices on the network reach it.
`);
