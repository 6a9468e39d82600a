/** What is read beside the bench: a page, and the place in it. */
export interface ReadPlace {
  /** the list of lessons, the glossary, or a lesson by the name of its file */
  readonly page: string;
  /** of a heading or a word, as it is addressed */
  readonly at?: string;
}

/** A place that Find knows. */
export interface FoundPage {
  readonly title: string;
  readonly words: readonly string[];
  readonly group: 'lesson' | 'term';
  readonly place: ReadPlace;
}
