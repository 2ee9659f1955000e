/** Rows of numbers of one kind, one row per member. */
export interface MemberRows {
  readonly rowOf: (member: number) => Float64Array | undefined;
  /** Keeps a row of `length` numbers if there is room for it; else it is not even made. */
  readonly keep: (member: number, length: number, make: () => Float64Array) => void;
}

interface Rows {
  readonly byMember: Map<number, Float64Array>;
  bytes: number;
  /** When it was asked for last, by a clock that counts. */
  usedAt: number;
  /** Whether it had to make room. */
  isGone: boolean;
}

/**
 * Keeps rows of members by what decides them, a `key`, up to a number of bytes in all. Where there is no room, the rows under the key
 * that has not been asked for longest go all together; those under the key that asks stay, and what comes on top is not kept: members are
 * run in order, and letting the first of them go for the last would leave nothing for the next time.
 */
export function makeMemberShelf(mostBytes: number): (key: string) => MemberRows {
  const shelf = new Map<string, Rows>();
  let bytes = 0;
  let clock = 0;

  function makeRoom(needed: number, asking: Rows): boolean {
    while (bytes + needed > mostBytes) {
      let oldest: string | null = null;
      let since = Number.POSITIVE_INFINITY;
      for (const [key, rows] of shelf) {
        if (rows === asking || rows.usedAt >= since) continue;
        oldest = key;
        since = rows.usedAt;
      }
      if (oldest === null) return false;
      const rows = shelf.get(oldest)!;
      shelf.delete(oldest);
      bytes -= rows.bytes;
      rows.isGone = true;
    }
    return true;
  }

  function rowsAt(key: string): Rows {
    const known = shelf.get(key);
    if (known !== undefined) return known;
    const rows = { byMember: new Map<number, Float64Array>(), bytes: 0, usedAt: clock, isGone: false };
    shelf.set(key, rows);
    return rows;
  }

  return (key) => {
    let held = rowsAt(key);
    const rows = () => {
      if (held.isGone) held = rowsAt(key);
      held.usedAt = ++clock;
      return held;
    };
    return {
      rowOf: (member) => rows().byMember.get(member),
      keep: (member, length, make) => {
        const needed = length * Float64Array.BYTES_PER_ELEMENT;
        const own = rows();
        if (!makeRoom(needed, own)) return;
        own.byMember.set(member, make());
        own.bytes += needed;
        bytes += needed;
      },
    };
  };
}
