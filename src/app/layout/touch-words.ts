/** Words of tablet, phone and hall. */
export const touchTexts = {
  numbers: 'The three numbers at the cursor',
  spread: 'Spread',
  atMark: 'at the mark',
  more: 'More',
  less: 'Less',
  moreRows: (n: number) => `${n} more rows`,
  rows: 'All rows',
  keep: 'Keep in sight',
  keepThis: (row: string) => `Keep in sight: ${row}`,
  area: 'Rate upward, moment of inertia across: now filled, take-off dashed',
  areaNow: 'now',
  areaTakeoff: 'take-off',
  areaFast: 'fast, narrow',
  areaSlow: 'slow, wide',
  athlete: 'Athlete',
  flight: 'Flight',
};
