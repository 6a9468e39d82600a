/** Open and save as files. */
import { useDocument } from './page.ts';
import { texts } from './words.ts';

export function FileButtons() {
  const doc = useDocument();
  return (
    <>
      <button type="button" onClick={() => doc.openFile()}>
        {texts.bar.open}
      </button>
      <button type="button" onClick={() => doc.saveFile()}>
        {texts.bar.save}
      </button>
      <button type="button" onClick={() => doc.saveVersion1()}>
        {texts.bar.saveVersion1}
      </button>
    </>
  );
}
