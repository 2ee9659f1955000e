/** Rows of numbers of one kind, one row per member. */
export interface MemberRows {
  readonly rowOf: (member: number) => Float64Array | undefined;
  /** Keeps a row of `length` numbers if there is room for it; else it is not even made. */
  readonly keep: (member: number, length: number, make: () => Float64Array) => void;
}

interface Rows {
  readonly byMember: Map<number, Float64Array>;
  bytes: number;
}

/**
 * Keeps rows of members by what decides them, a `key`, up to a number of bytes in all. Where there is no room, the rows under the key
 * that has not been asked for longest go all together; those under the key that asks stay, and what comes on top is not kept: members are
 * run in order, and letting the first of them go for the last would leave nothing for the next time.
 */
export function makeMemberShelf(mostBytes: number): (key: string) => MemberRows {
  const shelf = new Map<string, Rows>();
  let bytes = 0;

  function makeRoom(needed: number, key: string): boolean {
    for (const [other, rows] of shelf) {
      if (bytes + needed <= mostBytes) return true;
      if (other === key) continue;
      shelf.delete(other);
      bytes -= rows.bytes;
    }
    return bytes + needed <= mostBytes;
  }

  /** The newest stand last. */
  function rowsOf(key: string): Rows {
    const rows = shelf.get(key) ?? { byMember: new Map(), bytes: 0 };
    shelf.delete(key);
    shelf.set(key, rows);
    return rows;
  }

  return (key) => ({
    rowOf: (member) => rowsOf(key).byMember.get(member),
    keep: (member, length, make) => {
      const needed = length * Float64Array.BYTES_PER_ELEMENT;
      if (!makeRoom(needed, key)) return;
      const rows = rowsOf(key);
      rows.byMember.set(member, make());
      rows.bytes += needed;
      bytes += needed;
    },
  });
}
