/**
 * Pieces to be cut, laid close together on as few sheets as they go on: core/paper/nesting.py in the
 * browser. The largest are laid first, each where it leaves the least over. Pure; lengths are
 * millimetres.
 */

/** Lay pieces, each [width, height], on sheets of a free size; null when one is larger. @param {number[][]} pieces @param {number} width @param {number} height */
export function nest(pieces, width, height, gap = 3) {
  const order = pieces.map((_, number) => number)
    .sort((one, other) => area(pieces[other]) - area(pieces[one]));
  /** @type {any[]} */
  const sheets = [];
  /** @type {any[]} */
  const laid = [];
  for (const number of order) {
    const [wide, high] = pieces[number].map((side) => side + gap);
    let found = best(sheets, wide, high);
    if (!found) {
      sheets.push([{ x: 0, y: 0, width: width + gap, height: height + gap }]);
      found = best(sheets.slice(-1), wide, high);
      if (!found) return null;
      found.sheet = sheets.length - 1;
    }
    const { sheet, room: { x, y }, turned } = found;
    laid[number] = { piece: number, sheet, x, y, turned };
    const used = turned ? { x, y, width: high, height: wide } : { x, y, width: wide, height: high };
    sheets[sheet] = without(sheets[sheet], used);
  }
  return laid;
}

/** @param {number[]} piece */
function area(piece) {
  return piece[0] * piece[1];
}

// the room with the shortest rest beside the piece, the highest of them, then the one on the left
/** @param {Room[][]} sheets @param {number} wide @param {number} high */
function best(sheets, wide, high) {
  /** @type {any} */
  let found = null;
  sheets.forEach((rooms, sheet) => {
    for (const room of rooms) {
      for (const turned of [false, true]) {
        const [across, down] = turned ? [high, wide] : [wide, high];
        if (across > room.width || down > room.height) continue;
        const rest = Math.min(room.width - across, room.height - down);
        const rank = [sheet, rest, room.y, room.x, Number(turned)];
        if (!found || isBefore(rank, found.rank)) found = { rank, sheet, room, turned };
      }
    }
  });
  return found;
}

/** @param {number[]} one @param {number[]} other */
function isBefore(one, other) {
  const at = one.findIndex((value, index) => value !== other[index]);
  return at >= 0 && one[at] < other[at];
}

// the largest free rectangles that are left once `used` is taken
/** @param {Room[]} rooms @param {Room} used @returns {Room[]} */
function without(rooms, used) {
  /** @type {Room[]} */
  const left = [];
  const [right, foot] = [used.x + used.width, used.y + used.height];
  for (const room of rooms) {
    const [far, low] = [room.x + room.width, room.y + room.height];
    if (used.x >= far || right <= room.x || used.y >= low || foot <= room.y) {
      left.push(room);
      continue;
    }
    if (used.x > room.x) left.push({ ...room, width: used.x - room.x });
    if (right < far) left.push({ ...room, x: right, width: far - right });
    if (used.y > room.y) left.push({ ...room, height: used.y - room.y });
    if (foot < low) left.push({ ...room, y: foot, height: low - foot });
  }
  return left.filter((one) => !left.some((other) => !isSame(one, other) && holds(other, one)));
}

/** @param {Room} one @param {Room} other */
function isSame(one, other) {
  return one.x === other.x && one.y === other.y && one.width === other.width && one.height === other.height;
}

/** @param {Room} outer @param {Room} inner */
function holds(outer, inner) {
  return outer.x <= inner.x && outer.y <= inner.y
    && outer.x + outer.width >= inner.x + inner.width && outer.y + outer.height >= inner.y + inner.height;
}
