/** Where one limit of an angle comes from, out of the words for all three: "range: A; speed and torque: B". */
const LABEL = /(?:^|; )(range|speed and torque|speed|torque): /g;

/** The words for this limit alone; all of them where they do not tell the limits apart. */
export function wordLimitSource(words: string, kind: 'range' | 'speed' | 'torque'): string {
  const labels = [...words.matchAll(LABEL)];
  const own = labels.findIndex((label) => label[1].split(' and ').includes(kind));
  if (own < 0) return words;
  const from = labels[own].index + labels[own][0].length;
  return words.slice(from, labels[own + 1]?.index);
}
