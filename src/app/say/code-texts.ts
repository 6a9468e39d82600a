/** Words of the code line: typing a code drafts a skill. */
export const codeTexts = {
  open: 'Type a code to draft a skill',
  label: 'Trampoline code or dive number',
  hint: 'As “8 22 /” (quarter somersaults, half twists of each, shape o < /) or “5253B”.',
  direction: 'Direction',
  ways: { backward: 'Backward', forward: 'Forward' },
  inCode: { backward: 'The number says backward.', forward: 'The number says forward.' },
  notInCode: 'The code does not say it.',
  go: 'Draft',
  cancel: 'Cancel',
  close: 'Close',
  working: (code: string) => `Drafting ${code} …`,
  flights: (n: number) => (n === 1 ? '1 flight tried' : `${n} flights tried`),
  done: (code: string) => `First draft of ${code}: a start for editing, not a technique to copy.`,
  falls: (code: string, list: string) =>
    `First draft of ${code}: ${list}. A start for editing, not a technique to copy.`,
  step: (code: string) => `draft of ${code}`,
  cancelled: (code: string) => `Drafting of ${code} was stopped; nothing was changed.`,
  empty: 'Nothing is typed yet: a trampoline code such as “8 02 /” or a dive number such as “5253B”.',
  degrees: (fall: string) => fall.replace(/(\d) deg\b/g, '$1°'),
  failed: 'The draft could not be made:',
  busy: 'A draft is being made.',
} as const;
