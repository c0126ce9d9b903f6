// `use "alignments.play"` leads to that file.
import type { DocumentLink } from 'vscode-languageserver-types';
import { usesOf } from '../../language/names/definitions.ts';
import { fileMeant } from '../../language/names/sites.ts';
import type { OpenDocument } from './documents.ts';
import { rangeOf } from './positions.ts';

export function links({ uri, file }: OpenDocument): DocumentLink[] {
  let firstLine = 0;
  return file.blocks.flatMap((block) => {
    const found = usesOf(block).flatMap((name): DocumentLink[] => (name.kind === 'file' ? [{ range: rangeOf(firstLine, name.place), target: fileMeant(uri, name) }] : []));
    firstLine += block.lines.length;
    return found;
  });
}
