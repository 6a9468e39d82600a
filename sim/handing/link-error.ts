/** Why a link was not read or not made, in words that name the place. */

export type LinkFault =
  | { readonly kind: 'none' }
  /** `letter` counts from 1 in the text that was given; inexact: within a block of letters about it */
  | { readonly kind: 'damaged'; readonly letter: number; readonly isExact: boolean }
  /** all that is there is right, and the end is missing */
  | { readonly kind: 'cut'; readonly letters: number }
  | { readonly kind: 'newer'; readonly version: number }
  | { readonly kind: 'long'; readonly letters: number; readonly most: number }
  /** whole, and not a skill of this build: why, as a file would be refused */
  | { readonly kind: 'content'; readonly reason: string };

export class LinkError extends Error {
  readonly fault: LinkFault;
  constructor(fault: LinkFault, cause?: Error) {
    super(wordFault(fault), cause && { cause });
    this.name = 'LinkError';
    this.fault = fault;
  }
}

function wordFault(fault: LinkFault): string {
  switch (fault.kind) {
    case 'none':
      return 'This is no link of a skill';
    case 'damaged':
      return `This link is damaged ${fault.isExact ? 'at' : 'near'} its ${ordinal(fault.letter)} letter`;
    case 'cut':
      return `This link is cut off after ${fault.letters} letters`;
    case 'newer':
      return `This link was made by a newer version of this page (form ${fault.version}; this build reads form 1)`;
    case 'long':
      return `This link is too long: ${fault.letters} letters, at most ${fault.most}`;
    case 'content':
      return `This link holds no skill that can be opened: ${fault.reason}`;
  }
}

function ordinal(n: number): string {
  const teen = n % 100 >= 11 && n % 100 <= 13;
  return `${n}${teen ? 'th' : (['th', 'st', 'nd', 'rd'][n % 10] ?? 'th')}`;
}
