// How the parser chooses between ways on. Chevrotain works out every choice of the grammar before it reads the first word, two thirds
// of what building the parser takes; a choice worked out when a line first comes to it costs only what is written.
import { LLStarLookaheadStrategy } from 'chevrotain-allstar';

type Alternation = Parameters<LLStarLookaheadStrategy['buildLookaheadForAlternation']>[0];
type Optional = Parameters<LLStarLookaheadStrategy['buildLookaheadForOptional']>[0];
type Choose = ReturnType<LLStarLookaheadStrategy['buildLookaheadForAlternation']>;
type GoesOn = ReturnType<LLStarLookaheadStrategy['buildLookaheadForOptional']>;

/** As Langium's own, but each choice is worked out when it is first asked. */
export class LazyLookahead extends LLStarLookaheadStrategy {
  constructor() {
    // Langium's parser says nothing of ambiguities either once the grammar is in use: the generator has.
    super({ logging: () => undefined });
  }

  override buildLookaheadForAlternation(options: Alternation): Choose {
    let choose: Choose | undefined;
    const build = () => super.buildLookaheadForAlternation(options);
    return function (alternatives) {
      return (choose ??= build()).call(this, alternatives);
    };
  }

  override buildLookaheadForOptional(options: Optional): GoesOn {
    let goesOn: GoesOn | undefined;
    const build = () => super.buildLookaheadForOptional(options);
    return function () {
      return (goesOn ??= build()).call(this);
    };
  }
}
