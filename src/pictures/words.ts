/** Words inside pictures. */
export const pictureTexts = {
  metres: (m: string) => `${m} m`,
  apex: (size: string) => `highest ${size}`,
  rise: (size: string) => `rises ${size}`,
  travel: (size: string) => `travels ${size}`,
  surface: (size: string) => `lands at ${size}`,
  momentum: 'angular momentum',
  axis: 'axis of turning',
  lengthRead: (length: string, across: string, up: string) => `${length} (${across} across, ${up} up)`,
} as const;
