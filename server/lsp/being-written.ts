// Where each open text is being written: the line of the last edit, until the coach goes elsewhere.
import { blockAtLine, type Block } from '../../language/book/book.ts';
import type { Finding } from '../../language/checks/finding.ts';
import { whileWritten } from '../../language/checks/while-written.ts';
import type { Documents } from './documents.ts';

export interface BeingWritten {
  /** `line` of the last edit; undefined where it is nobody's typing. */
  readonly typed: (uri: string, line: number | undefined) => void;
  /** The cursor stands there now. Whether that makes a difference to what is told. */
  readonly wentTo: (uri: string, line: number) => boolean;
  readonly closed: (uri: string) => void;
  /** What is missing of the play that is being written is told as a hint. */
  readonly quieter: <Told extends Finding>(uri: string, block: Block, firstLine: number, findings: readonly Told[]) => readonly Told[];
}

export function followWriting(documents: Pick<Documents, 'get'>): BeingWritten {
  const lines = new Map<string, number>();
  return {
    typed(uri, line) {
      if (line === undefined) lines.delete(uri);
      else lines.set(uri, line);
    },
    wentTo(uri, line) {
      const written = lines.get(uri);
      const file = documents.get(uri)?.file;
      if (written === undefined || file === undefined || written === line) return false;
      // A blank line or two below the last is where the next one is about to be written.
      const { block, firstLine } = blockAtLine(file, written);
      const last = block.lines.findLastIndex(({ parsed }) => parsed.tree !== undefined || parsed.fault !== undefined);
      if (line > written && written - firstLine >= last && line - firstLine < block.lines.length) return false;
      lines.delete(uri);
      return true;
    },
    closed: (uri) => void lines.delete(uri),
    quieter(uri, block, firstLine, findings) {
      const line = lines.get(uri);
      return line === undefined ? findings : whileWritten(findings, block.lines, line - firstLine);
    },
  };
}
