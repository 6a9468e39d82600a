/** The files of a class read, one a step: parsing a long skill thirty times is felt on the thread of the page. */
import { type ClassFiles, type GivenFile, makeClassReader } from '../../../sim/index.ts';
import type { JobKind } from '../job.ts';

interface ClassFilesRequest {
  readonly files: readonly GivenFile[];
}
interface Progress {
  readonly done: number;
  readonly all: number;
}

export const classFilesJob: JobKind<ClassFilesRequest, undefined, Progress, ClassFiles> = {
  open: ({ files }) =>
    function* () {
      const reader = makeClassReader();
      for (const [i, file] of files.entries()) {
        reader.add(file);
        if (yield { done: i + 1, all: files.length }) break;
      }
      return reader.get();
    },
};
