// What an installed extension says of itself in VS Code: the front page without what only stands in its folder (pictures, commands, other pages).

const ofTheFolder = new Set(['Start', 'On the command line', 'For developers']);

export function installedReadme(readme: string): string {
  const [opening, ...sections] = readme.split(/^(?=## )/m);
  const kept = [opening!, ...sections.filter((section) => !ofTheFolder.has(/^## (.*)/.exec(section)![1]!))];
  return `${kept.flatMap((section) => section.split(/\n{2,}/).filter((paragraph) => !leadsThere(paragraph)).map(withoutLinks)).join('\n\n').trimEnd()}\n`;
}

/** A picture, or a paragraph that only says where more is to be found. */
const leadsThere = (paragraph: string): boolean => /^<(?:picture|img)\b/.test(paragraph) || /^More in \[/.test(paragraph);

const withoutLinks = (paragraph: string): string => paragraph.replace(/\[([^\]]*)\]\((?!https?:)[^)]*\)/g, '$1').trimEnd();
