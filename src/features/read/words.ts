/** Words of the reader beside the bench. */
export const readTexts = {
  label: 'Reader',
  close: 'Close the reader',
  side: 'Other side',
  all: 'All lessons',
  glossary: 'Glossary',
  contents: 'On this page',
  lesson: (title: string) => `Lesson: ${title}`,
  lessonWords: ['guide', 'help', 'tutorial', 'learn', 'how to', 'start'],
  word: (term: string) => `What “${term}” means`,
} as const;
