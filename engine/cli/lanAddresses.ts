import type { NetworkInterfaceInfo } from "node:os";

/** What programs make for themselves: nobody's phone is there. */
const OWN_DEVICES = /^(docker|br-|veth|virbr|vmnet|vboxnet|vethernet|tun|tap|utun|wg|zt)/i;
/** What a machine gives itself when nobody gives it an address (RFC 3927). */
const NO_NETWORK = /^169\.254\./;

/**
 * Addresses under which other machines on the same network reach this one, the likeliest first.
 * @param interfaces as `os.networkInterfaces()` lists them
 */
export function lanAddresses(interfaces: Readonly<Record<string, readonly NetworkInterfaceInfo[] | undefined>>) {
  const found = Object.entries(interfaces).flatMap(([name, infos = []]) =>
    infos
      .filter(({ family, internal, address }) => family === "IPv4" && !internal && !NO_NETWORK.test(address))
      .map(({ address }) => ({ address, isOwn: OWN_DEVICES.test(name) })),
  );
  return found.sort((a, b) => Number(a.isOwn) - Number(b.isOwn)).map(({ address }) => address);
}
