// The list of words that opens while a coach types: it opens again where a word has to follow, and knows when Enter takes a word of it.
// Enter ends the line; it takes a word only where the line cannot end yet, or where the arrow keys have gone to that word (package.json, keybindings).
import { commands, l10n, type CompletionItem, type CompletionList, type Disposable } from 'vscode';
import type { Middleware } from 'vscode-languageclient';

const lineGoesOn = 'setwright.lineGoesOn';
const choosing = 'setwright.choosing';

const tell = (key: string, value: boolean) => commands.executeCommand('setContext', key, value);

export const wordList: Pick<Middleware, 'provideCompletionItem'> = {
  async provideCompletionItem(document, position, how, token, next) {
    const answer = await next(document, position, how, token);
    const items = itemsOf(answer);
    items.forEach(openNextList);
    void tell(choosing, false);
    void tell(lineGoesOn, items.some((item) => dataOf(item).goesOn === true));
    return answer;
  },
};

/** The arrow keys have gone through the list. */
export const registerChoosing = (): Disposable => commands.registerCommand('setwright.choosing', () => tell(choosing, true));

const itemsOf = (answer: CompletionList | CompletionItem[] | null | undefined): readonly CompletionItem[] => (Array.isArray(answer) ? answer : (answer?.items ?? []));

const dataOf = (item: CompletionItem) => (item as { readonly data?: { readonly more?: unknown; readonly goesOn?: unknown } }).data ?? {};

function openNextList(item: CompletionItem) {
  if (dataOf(item).more === true) item.command = { title: l10n.t('What can follow'), command: 'editor.action.triggerSuggest' };
}
