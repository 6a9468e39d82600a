/** Every text of the class's room and of a student's sheet. */
export const classTexts = {
  start: {
    title: 'Worksheets for a class',
    lead: 'one skill, a few questions, answers that lock before the model shows its own.',
    answer: 'Answer a worksheet',
    answerWhy: 'Open the file or paste the link that you were given, or take a ready one.',
    openFile: 'Open a file',
    link: 'Link of a worksheet',
    openLink: 'Open the link',
    ready: 'Ready ones',
    about: (questions: number, order: string) => `${questions} questions, ${order}`,
    write: 'Write a worksheet',
    writeWhy: (skill: string) => `Questions about the skill that is open on the bench: ${skill}.`,
    begin: 'Begin',
    read: 'Read what a class handed in',
    readWhy: 'Choose all files at once, or drop them anywhere on this page. They stay on this machine.',
    choose: 'Choose files',
  },
  answeredBeside:
    'This worksheet is being answered in another tab too. What you write here is kept beside that, and nothing of either is written over.',
  answersUnread:
    'What this browser keeps of answers cannot be read now. Nothing is written over it: open the worksheet again in a while.',
  views: { answer: 'Answers', write: 'Write a worksheet', table: 'What a class handed in' },
} as const;
