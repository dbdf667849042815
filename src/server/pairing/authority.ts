import { createHash, generateKeyPairSync, randomBytes, X509Certificate } from "node:crypto";
import { isIP } from "node:net";
import forge from "node-forge";
import { nameConstraints } from "./name-constraints.ts";

/** A certificate and its private key, as PEM. */
export interface Certified {
  readonly certificate: string;
  readonly key: string;
}

const dayMs = 86_400_000;
const authorityDays = 3_650;
/** Telephones refuse leaves that last longer than 825 days; the shop renews long before. */
const leafDays = 397;
/** A clock that is a little slow must find today's certificate already good. */
const earlierMs = dayMs;

const newKey = (): string =>
  generateKeyPairSync("rsa", { modulusLength: 2048 })
    .privateKey.export({ type: "pkcs8", format: "pem" })
    .toString();

/** Positive and never given twice. Source: RFC 5280, 4.1.2.2. */
const newSerial = (): string => `01${randomBytes(15).toString("hex")}`;

function blank(keyPem: string, subject: string, now: Date, days: number): forge.pki.Certificate {
  const { n, e } = forge.pki.privateKeyFromPem(keyPem);
  const cert = forge.pki.createCertificate();
  cert.publicKey = forge.pki.setRsaPublicKey(n, e);
  cert.serialNumber = newSerial();
  cert.validity.notBefore = new Date(now.getTime() - earlierMs);
  cert.validity.notAfter = new Date(now.getTime() + days * dayMs);
  cert.setSubject([{ name: "commonName", value: subject }]);
  return cert;
}

/**
 * A certificate authority that can speak for this shop alone: its certificate says for which names and private
 * addresses it may sign, so that whoever stole its key could not pass for any other site on a phone that trusts it.
 */
export function makeAuthority(
  shop: string,
  names: readonly string[],
  addresses: readonly string[],
  now: Date,
): Certified {
  const key = newKey();
  const subject = `Lacbench authority of ${shop}`;
  const cert = blank(key, subject, now, authorityDays);
  cert.setIssuer([{ name: "commonName", value: subject }]);
  cert.setExtensions([
    { name: "basicConstraints", cA: true, pathLenConstraint: 0, critical: true },
    { name: "keyUsage", keyCertSign: true, cRLSign: true, critical: true },
    { name: "subjectKeyIdentifier" },
    nameConstraints(names, addresses),
  ]);
  cert.sign(forge.pki.privateKeyFromPem(key), forge.md.sha256.create());
  return { certificate: forge.pki.certificateToPem(cert), key };
}

/** A certificate for the server, signed by the shop's authority, for every name and address that it goes by. */
export function makeLeaf(
  authority: Certified,
  names: readonly string[],
  addresses: readonly string[],
  now: Date,
): Certified {
  const key = newKey();
  const issuer = forge.pki.certificateFromPem(authority.certificate);
  const cert = blank(key, names[0] ?? addresses[0] ?? "lacbench", now, leafDays);
  cert.setIssuer(issuer.subject.attributes);
  cert.setExtensions([
    { name: "basicConstraints", cA: false, critical: true },
    { name: "keyUsage", digitalSignature: true, keyEncipherment: true, critical: true },
    { name: "extKeyUsage", serverAuth: true },
    {
      name: "subjectAltName",
      altNames: [...names.map((value) => ({ type: 2, value })), ...addresses.map((ip) => ({ type: 7, ip }))],
    },
    { name: "subjectKeyIdentifier" },
    { name: "authorityKeyIdentifier", keyIdentifier: issuer.generateSubjectKeyIdentifier().getBytes() },
  ]);
  cert.sign(forge.pki.privateKeyFromPem(authority.key), forge.md.sha256.create());
  return { certificate: forge.pki.certificateToPem(cert), key };
}

/** SHA-256 of a certificate as phones show it: pairs of digits. */
export const fingerprint = (certificate: string): string => new X509Certificate(certificate).fingerprint256;

/** As a phone takes it in: the bytes without the text around them. */
export const derOf = (certificate: string): Uint8Array =>
  new Uint8Array(new X509Certificate(certificate).raw);

/** Whether a certificate is good for all of these for a month to come. */
export function covers(certificate: string, hosts: readonly string[], now: Date): boolean {
  const read = new X509Certificate(certificate);
  const good = Date.parse(read.validTo) > now.getTime() + 30 * dayMs;
  return good && hosts.every((host) => speaksFor(read, host));
}

export const speaksFor = (certificate: X509Certificate, host: string): boolean =>
  (isIP(host) === 0 ? certificate.checkHost(host) : certificate.checkIP(host)) !== undefined;

export const sha256Hex = (text: string): string => createHash("sha256").update(text).digest("hex");
