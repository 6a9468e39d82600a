/** Words of links: what was opened by one, why it was not, and where this bench is found. */
export const linkTexts = {
  opened: (title: string) => `From a link: ${title}.`,
  kept: 'Your work is kept.',
  again: (title: string) => `From a link: ${title}. It was here already.`,
  step: (title: string) => `Open ${title} from a link`,
  changes: {
    body: "Handed on without the age: an adult's body flies here and is compared with an adult's strength; the sender's was another.",
    swing: 'Handed on without the mass: the bar gave otherwise under the sender.',
    strength: "Handed on without the age: strengths are compared as an adult's.",
    landing: 'Handed on without the mass: the mat gave otherwise under the sender.',
    forces: '',
  },
  compare: 'Compare with mine',
  compareStep: (title: string) => `Add ${title}`,
  /** a title that is taken */
  another: (title: string, n: number) => (n === 1 ? `${title} (from a link)` : `${title} (from a link, ${n})`),
  content: (reason: string) => `It holds no skill that can be opened: ${reason}`,
  address: {
    title: 'Address of this bench',
    hint: 'Links and codes begin with it. Left empty: the address of this page, where others can reach it.',
    wrong: 'An address begins with https:// or http://. Nothing was changed.',
    none: 'https://',
  },
} as const;
