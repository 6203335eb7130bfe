/** The assignment problem: who goes to whom, so that the costs sum up to the least. */

/**
 * For each row the column that it is assigned to. `costs` has at least as many columns as rows, all finite. Shortest
 * augmenting paths with potentials (H. W. Kuhn, 1955; N. Tomizawa, 1971): rows x rows x columns steps.
 */
export function assignRows(costs: readonly (readonly number[])[]): readonly number[] {
  const columns = costs[0]?.length ?? 0;
  const rowPotential = new Array<number>(costs.length + 1).fill(0);
  const columnPotential = new Array<number>(columns + 1).fill(0);
  /** Row assigned to each column, from 1; 0: none. Column 0 carries the row that is being added. */
  const rowOf = new Array<number>(columns + 1).fill(0);
  for (let row = 1; row <= costs.length; row += 1) {
    rowOf[0] = row;
    const { last, before } = findPath(costs, rowPotential, columnPotential, rowOf);
    for (let column = last; column !== 0; column = before[column] ?? 0) rowOf[column] = rowOf[before[column] ?? 0] ?? 0;
  }
  const assigned = new Array<number>(costs.length).fill(-1);
  for (let column = 1; column <= columns; column += 1) {
    const row = rowOf[column] ?? 0;
    if (row > 0) assigned[row - 1] = column - 1;
  }
  return assigned;
}

/** The cheapest way from the row at column 0 to a free column; potentials are kept so that no reduced cost is negative. */
function findPath(
  costs: readonly (readonly number[])[],
  rowPotential: number[],
  columnPotential: number[],
  rowOf: readonly number[],
): { readonly last: number; readonly before: readonly number[] } {
  const columns = rowOf.length - 1;
  const least = new Array<number>(columns + 1).fill(Number.POSITIVE_INFINITY);
  const before = new Array<number>(columns + 1).fill(0);
  const visited = new Array<boolean>(columns + 1).fill(false);
  let at = 0;
  do {
    visited[at] = true;
    const row = rowOf[at] ?? 0;
    let next = 0;
    let step = Number.POSITIVE_INFINITY;
    for (let column = 1; column <= columns; column += 1) {
      if (visited[column]) continue;
      const cost = costs[row - 1]?.[column - 1] ?? Number.POSITIVE_INFINITY;
      const reduced = cost - (rowPotential[row] ?? 0) - (columnPotential[column] ?? 0);
      if (reduced < (least[column] ?? 0)) {
        least[column] = reduced;
        before[column] = at;
      }
      if ((least[column] ?? 0) < step) {
        step = least[column] ?? 0;
        next = column;
      }
    }
    for (let column = 0; column <= columns; column += 1) {
      if (visited[column]) {
        const owner = rowOf[column] ?? 0;
        rowPotential[owner] = (rowPotential[owner] ?? 0) + step;
        columnPotential[column] = (columnPotential[column] ?? 0) - step;
      } else least[column] = (least[column] ?? 0) - step;
    }
    at = next;
  } while ((rowOf[at] ?? 0) !== 0);
  return { last: at, before };
}
