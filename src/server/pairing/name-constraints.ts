import { isIPv4 } from "node:net";
import forge from "node-forge";

/** Names that no public site can have. Sources: RFC 6762 (local), RFC 8375 (home.arpa), RFC 6761 (localhost, test); `lan` and `internal` by custom and by ICANN's reservation of 2024. */
const privateNames = ["local", "home.arpa", "lan", "internal", "localhost", "test"];

/** Addresses of private networks, with their masks. Sources: RFC 1918, RFC 3927, RFC 6598, RFC 4193, RFC 4291. */
const privateNetworks = [
  "0a000000ff000000", // 10.0.0.0/8
  "ac100000fff00000", // 172.16.0.0/12
  "c0a80000ffff0000", // 192.168.0.0/16
  "a9fe0000ffff0000", // 169.254.0.0/16
  "64400000ffc00000", // 100.64.0.0/10
  "7f000000ff000000", // 127.0.0.0/8
  `fc${"0".repeat(30)}fe${"0".repeat(30)}`, // fc00::/7
  `fe80${"0".repeat(28)}ffc0${"0".repeat(28)}`, // fe80::/10
  `${"0".repeat(31)}1${"f".repeat(32)}`, // ::1
];

// The library has it, its types do not.
const { bytesFromIP } = forge.util as typeof forge.util & { bytesFromIP: (address: string) => string };
const exactly = (address: string): string =>
  `${forge.util.bytesToHex(bytesFromIP(address))}${"f".repeat(isIPv4(address) ? 8 : 32)}`;

const { asn1 } = forge;
const general = (tag: number, bytes: string) => asn1.create(asn1.Class.CONTEXT_SPECIFIC, tag, false, bytes);
const subtree = (base: forge.asn1.Asn1) =>
  asn1.create(asn1.Class.UNIVERSAL, asn1.Type.SEQUENCE, true, [base]);

/** The extension by which a certificate authority may sign for these names and addresses alone. Source: RFC 5280, 4.2.1.10. */
export function nameConstraints(names: readonly string[], addresses: readonly string[]) {
  const dns = [...new Set([...privateNames, ...names])].map((name) => subtree(general(2, name)));
  const networks = [...new Set([...privateNetworks, ...addresses.map(exactly)])];
  const ips = networks.map((hex) => subtree(general(7, forge.util.hexToBytes(hex))));
  const permitted = asn1.create(asn1.Class.CONTEXT_SPECIFIC, 0, true, [...dns, ...ips]);
  const value = asn1.create(asn1.Class.UNIVERSAL, asn1.Type.SEQUENCE, true, [permitted]);
  return { id: "2.5.29.30", critical: true, value };
}
