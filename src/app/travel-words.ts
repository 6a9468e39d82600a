/** What of an athlete goes along with a skill, in words. */
export const travelTexts = {
  names: { name: 'name', age: 'age', mass: 'mass', sheets: 'estimate sheets', film: 'times from film' },
  filmHint: 'with their errors, scale and posed frames; the name of the file goes with the name',
  sheetsHint: 'their lines may hold a name, an age or a mass',
  name: (name: string) => `name ${name}`,
  age: (years: string) => `age ${years}`,
  mass: (mass: string) => `mass ${mass}`,
  notInFile: 'not in the file',
  bodyHint: 'its segments and their masses: the flight needs them',
  massHint: 'else in body weights',
  massHintBar: 'else another swing on the bar',
  ageHint: 'changes nothing here',
  ageHintChild: "else an adult's body, or strength, is taken",
  clubHint: 'the club goes along',
  /** what is another for the one who opens it */
  changes: {
    body: "Without the age it flies with an adult's body: another flight.",
    strength: "Without the age strengths are compared as an adult's.",
    landing: 'Without the mass a mat gives more or less: another landing.',
    swing: 'Without the mass a bar gives more or less: another swing, and another flight.',
  },
  titleNames: (word: string) => `The title says “${word}”: it is handed on.`,
} as const;
