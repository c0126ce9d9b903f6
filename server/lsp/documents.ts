// The documents an editor has open, and files it has not. The book is the only copy of an open document's text: an edit of the
// protocol is an edit of the book.
import { editFile, emptyBook, openFile, setFiles, type Book, type BookFile, type TextEdit } from '../../language/book/book.ts';

export interface OpenDocument {
  readonly uri: string;
  readonly version: number;
  readonly file: BookFile;
}

export interface Documents {
  readonly book: () => Book;
  readonly get: (uri: string) => OpenDocument | undefined;
  readonly all: () => readonly OpenDocument[];
  readonly open: (uri: string, version: number, text: string) => void;
  /** Changes as the protocol sends them, each on the text the one before has left. */
  readonly change: (uri: string, version: number, edits: readonly TextEdit[]) => void;
  /** Its text stays what it was until somebody says what lies on the disk. */
  readonly close: (uri: string) => void;
  /** What files say on the disk, undefined where they are not there. While the editor has one open that does not count. */
  readonly setOnDisk: (texts: readonly (readonly [uri: string, text: string | undefined])[]) => void;
}

export function openDocuments(): Documents {
  let book = emptyBook;
  const versions = new Map<string, number>();

  const get = (uri: string): OpenDocument | undefined => {
    const version = versions.get(uri);
    const file = book.files.get(uri);
    return version === undefined || file === undefined ? undefined : { uri, version, file };
  };

  return {
    book: () => book,
    get,
    all: () => [...versions.keys()].map(get).filter((document) => document !== undefined),
    open(uri, version, text) {
      book = openFile(book, uri, text);
      versions.set(uri, version);
    },
    change(uri, version, edits) {
      if (!versions.has(uri)) return;
      book = editFile(book, uri, edits);
      versions.set(uri, version);
    },
    close: (uri) => void versions.delete(uri),
    setOnDisk(texts) {
      const counting = texts.filter(([uri]) => !versions.has(uri));
      if (counting.length > 0) book = setFiles(book, counting);
    },
  };
}
