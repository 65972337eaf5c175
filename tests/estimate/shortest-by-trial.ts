/** Written apart from the search: every way to build a layout of a few pieces by joining two blocks. */
export const shortestByTrial = (
  pieces: readonly { width: number; length: number }[],
  width: number,
  mayTurn: boolean,
): number => {
  const memo = new Map<number, Set<string>>();
  const sizesOf = (set: number): Set<string> => {
    const known = memo.get(set);
    if (known) return known;
    const sizes = new Set<string>();
    const members = pieces.map((_, i) => i).filter((i) => set & (1 << i));
    if (members.length === 1) {
      const { width: w, length: l } = pieces[members[0]!]!;
      sizes.add(`${w} ${l}`);
      if (mayTurn) sizes.add(`${l} ${w}`);
    }
    for (let part = (set - 1) & set; part > set - part; part = (part - 1) & set) {
      for (const a of sizesOf(part)) {
        const [aw, al] = a.split(' ').map(Number) as [number, number];
        for (const b of sizesOf(set ^ part)) {
          const [bw, bl] = b.split(' ').map(Number) as [number, number];
          if (aw + bw <= width) sizes.add(`${aw + bw} ${Math.max(al, bl)}`);
          if (Math.max(aw, bw) <= width) sizes.add(`${Math.max(aw, bw)} ${al + bl}`);
        }
      }
    }
    memo.set(set, sizes);
    return sizes;
  };
  return Math.min(
    ...[...sizesOf((1 << pieces.length) - 1)]
      .map((size) => size.split(' ').map(Number) as [number, number])
      .filter(([w]) => w <= width)
      .map(([, l]) => l),
  );
};
