// After a word that something has to follow, the list of what can follow opens by itself.
import { l10n, type CompletionItem } from 'vscode';
import type { Middleware } from 'vscode-languageclient';

export const openNextList: Pick<Middleware, 'provideCompletionItem'> = {
  async provideCompletionItem(document, position, how, token, next) {
    const answer = await next(document, position, how, token);
    const items = Array.isArray(answer) ? answer : (answer?.items ?? []);
    items.forEach(thenOpen);
    return answer;
  },
};

function thenOpen(item: CompletionItem) {
  const { data } = item as CompletionItem & { readonly data?: { readonly more?: unknown } };
  if (data?.more === true) item.command = { title: l10n.t('What can follow'), command: 'editor.action.triggerSuggest' };
}
