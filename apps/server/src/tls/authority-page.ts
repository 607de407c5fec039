import encodeQR from 'qr';
import { fingerprintOf } from './certificates.js';

export interface AuthorityPage {
  /** The authority's certificate in PEM. */
  readonly certificatePem: string;
  /** Address of this page as a phone on the shop's network reaches it; drawn as the QR code. */
  readonly pageUrl: string;
  /** Address of the certificate alone; serve it as application/x-x509-ca-cert. */
  readonly certificateUrl: string;
}

/**
 * The page from which a phone, tablet or desk computer installs the shop's authority, as a whole HTML document without
 * script, style or anything from elsewhere, so that the strictest Content-Security-Policy shows it.
 */
export function authorityPage({ certificatePem, pageUrl, certificateUrl }: AuthorityPage): string {
  const qr = encodeQR(pageUrl, 'svg', { border: 4 }).replace(
    '<svg ',
    '<svg width="232" height="232" role="img" aria-labelledby="qr" ',
  );
  return `<!doctype html>
<html lang="en-GB">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>Let this device trust the shop's server</title>
</head>
<body>
<main>
<h1>Let this device trust the shop's server</h1>
<p>Holdfast is reached over an encrypted connection that the shop's own server vouches for. Each phone, tablet and
computer of the shop is told once to believe it.</p>
<ol>
<li><a href="${escaped(certificateUrl)}" download="holdfast-authority.crt">Download the shop's authority</a>.</li>
<li>Open the device's details of the downloaded certificate and compare its SHA-256 fingerprint with the one that
<code>npm run tls</code> printed on the server. If they differ, stop and do not install it.
<p><code>${fingerprintOf(certificatePem)}</code></p>
The figures above come over the same network as the download; the ones printed on the server do not.</li>
<li>Install it.
<ul>
<li>iPhone, iPad: open the downloaded profile in Settings and install it, then switch it on under General, About,
Certificate Trust Settings.</li>
<li>Android: Settings, search for &ldquo;CA certificate&rdquo;, choose the downloaded file.</li>
<li>Windows: open the file, install it for the current user under &ldquo;Trusted Root Certification Authorities&rdquo;.</li>
<li>macOS: open the file in Keychain Access and set it to &ldquo;Always Trust&rdquo;.</li>
<li>Firefox: Settings, Certificates, View Certificates, Authorities, Import.</li>
</ul>
</li>
<li>Close this page and open Holdfast again.</li>
</ol>
<p>A device that has installed it believes whatever the holder of the server's data folder signs. Install it on the
shop's own devices only, keep that folder to yourselves, and remove it from devices that leave the shop.</p>
<h2 id="qr">This page for a phone's camera</h2>
<p>${qr}</p>
<p>${escaped(pageUrl)}</p>
</main>
</body>
</html>
`;
}

function escaped(text: string): string {
  return text.replace(/[&<>"']/g, (character) => `&#${character.charCodeAt(0)};`);
}
