/**
 * Who can follow a link to this page: others too; those at this machine alone, for an address that means another machine elsewhere; or nobody, for
 * a page that is a file.
 */
export type Reach = "others" | "machine" | "nobody";

/** Hosts that name whatever machine they are read on (RFC 6761, section 6.3; RFC 1122, section 3.2.1.3; RFC 4291, section 2.5.3). */
const THIS_MACHINE = /^((.+\.)?localhost|127(\.\d+){3}|\[::1\])$/;

export function reachOf({ protocol, hostname }: Pick<Location, "protocol" | "hostname">): Reach {
  if (protocol !== "http:" && protocol !== "https:") return "nobody";
  return THIS_MACHINE.test(hostname) ? "machine" : "others";
}
