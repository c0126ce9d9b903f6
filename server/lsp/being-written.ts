// Where each open text is being written: the line of the last edit, until the coach goes elsewhere or saves.
import { blockAtLine, type Block } from '../../language/book/book.ts';
import type { Finding } from '../../language/checks/finding.ts';
import { whileWritten, type WrittenAt } from '../../language/checks/while-written.ts';
import type { Documents } from './documents.ts';

export interface BeingWritten {
  /** `line` of the last edit; undefined where it is nobody's typing. */
  readonly typed: (uri: string, line: number | undefined) => void;
  /** The cursor stands in that line now; undefined: nowhere in this text. Whether that makes a difference to what is told. */
  readonly wentTo: (uri: string, line: number | undefined) => boolean;
  readonly closed: (uri: string) => void;
  /** What is missing of the line and of the play that are being written is told as a hint. */
  readonly quieter: <Told extends Finding>(uri: string, block: Block, firstLine: number, findings: readonly Told[]) => readonly Told[];
}

export function followWriting(documents: Pick<Documents, 'get'>): BeingWritten {
  /** Lines counted from the file's first. */
  const places = new Map<string, WrittenAt>();
  return {
    typed(uri, line) {
      if (line === undefined) places.delete(uri);
      else places.set(uri, { line });
    },
    wentTo(uri, line) {
      const written = places.get(uri);
      const file = documents.get(uri)?.file;
      if (written === undefined || file === undefined || written.line === line) return false;
      // A blank line or two below the last is where the next one is about to be written: the play goes on, the line does not.
      const { block, firstLine } = blockAtLine(file, written.line);
      const last = block.lines.findLastIndex(({ parsed }) => parsed.tree !== undefined || parsed.fault !== undefined);
      const goesOn = line !== undefined && line > written.line && written.line - firstLine >= last && line - firstLine < block.lines.length;
      if (goesOn) places.set(uri, { ...written, left: true });
      else places.delete(uri);
      return !goesOn || written.left !== true;
    },
    closed: (uri) => void places.delete(uri),
    quieter(uri, block, firstLine, findings) {
      const written = places.get(uri);
      return written === undefined ? findings : whileWritten(findings, block.lines, { ...written, line: written.line - firstLine });
    },
  };
}
