/**
 * A message in a window keeps a coach's words as they are written: VS Code makes a link of words in brackets with an address behind them,
 * and a link may run a command. An invisible sign between the two keeps them words.
 */
export const asMessage = (text: string): string => text.replaceAll('](', ']\u200b(');
