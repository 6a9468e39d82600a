/** Moving pictures for the page: which formats there are, how many pictures, one of them, and the file. */
import { runPieces } from '../scene/pieces.ts';
import type { MovingFormat, MovingOrder, MovingPictures, MovingRequest } from './moving-input.ts';
import { makePicturePen } from './picture-pen.ts';
import { lastsS, makePictureTimes, timeOfPicture } from './picture-times.ts';

const writing = () => import('./write-moving.ts');

const timesOf = ({ from, to, slower }: Pick<MovingRequest, 'from' | 'to' | 'slower'>) =>
  makePictureTimes(from, to, slower);

export const movingPictures: MovingPictures = {
  async formats(size): Promise<readonly MovingFormat[]> {
    // where there is no encoder nothing has to be loaded to say so
    if (typeof VideoEncoder === 'undefined' || typeof VideoFrame === 'undefined') return [];
    return (await writing()).findFormats(size);
  },
  count: (request) => {
    const times = timesOf(request);
    return { pictures: times.count, lastsS: lastsS(times) };
  },
  pen: makePicturePen,
  make: async (request, order: MovingOrder) => {
    const times = timesOf(request);
    const [{ writeMoving }, { movingOrigin }] = await Promise.all([writing(), import('./moving-origin.ts')]);
    const comment = `${movingOrigin(request.result, order.origin)}. ${order.tags.comment}`;
    const canvas = document.createElement('canvas');
    const pen = runPieces(makePicturePen(canvas, request));
    try {
      const draw = (n: number): void => pen.draw(Math.min(timeOfPicture(times, n), request.to));
      return await writeMoving(canvas, times.count, draw, { ...order, tags: { ...order.tags, comment } });
    } finally {
      pen.destroy();
    }
  },
};
