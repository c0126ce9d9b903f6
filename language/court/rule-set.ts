import type { Source } from './point.ts';
import type { Measure, Sourced } from './sources.ts';

export const ruleSetIds = ['fiba', 'nba', 'ncaa-men', 'ncaa-women', 'nfhs', 'mini'] as const;
export type RuleSetId = (typeof ruleSetIds)[number];

/** The measures of the floor. Lengths in metres; `undefined` where the rule set has no such line. */
export interface CourtMeasures {
  /** Inner edge to inner edge of the boundary lines. */
  readonly length: Measure;
  readonly width: Measure;
  readonly ringCentreToBaseline: Measure;
  readonly boardToBaseline: Measure;
  readonly ringHeight: Measure;
  readonly ringDiameter: Measure;
  readonly boardWidth: Measure;
  readonly laneWidth: Measure;
  /** Baseline to the far edge of the free-throw line. */
  readonly laneLength: Measure;
  /** Free-throw line to the plane of the board's face. */
  readonly freeThrowLineToBoard: Measure;
  /** Ring centre to the outer edge of the arc. */
  readonly threeRadius: Measure | undefined;
  /** Ring centre to the outer edge of the straight part beside the sideline, across the court. */
  readonly threeCorner: Measure | undefined;
  /** Inside edge of the no-charge arc. */
  readonly restrictedRadius: Measure | undefined;
  readonly centreCircleRadius: Measure;
  /** Baseline to the mark on the sideline where the ball is put in after a time-out. */
  readonly throwInMark: Measure | undefined;
  readonly lineWidth: Measure;
}

/** What the officials count, in seconds; `undefined` where the rule set counts nothing. */
export interface Counts {
  readonly throwIn: Measure;
  readonly backcourt: Measure | undefined;
  /** When the backcourt count begins, in words. */
  readonly backcourtStarts: Sourced<string> | undefined;
  readonly threeSeconds: Measure;
  readonly defensiveThreeSeconds: Measure | undefined;
  readonly shotClock: Measure | undefined;
  readonly shotClockAfterOffensiveRebound: Measure | undefined;
  /** At least this much is left after a defensive foul with the throw-in in the frontcourt. */
  readonly shotClockAfterFrontcourtFoul: Measure | undefined;
  readonly closelyGuarded: CloselyGuarded | undefined;
}

export interface CloselyGuarded {
  readonly seconds: Measure;
  /** The defender is nearer than this. */
  readonly within: Measure;
  /** Whether a dribbler is counted as well as a holder. */
  readonly countsDribbler: Sourced<boolean>;
}

export interface ThrowInRules {
  /** How far along the line the thrower may move from his spot, all told, in metres. */
  readonly lateral: Measure;
  readonly mayMoveBack: Sourced<boolean>;
  /** He may run the endline only after the other team's score. */
  readonly mayRunEndlineAfterGoal: Sourced<boolean>;
  readonly mayHandBallOver: Sourced<boolean>;
}

export interface ClockRules {
  readonly periods: Measure;
  readonly periodSeconds: Measure;
  readonly overtimeSeconds: Measure;
  /** What starts the game clock on a throw-in, in words. */
  readonly startsOnThrowIn: Sourced<string>;
  /** The clock stands after a goal in this many last seconds of the last period and of overtime; 0 where it runs on. */
  readonly stopsAfterGoalLastPeriod: Measure;
  /** The same for every other period. */
  readonly stopsAfterGoalOtherPeriods: Measure;
  /** The least time that comes off for a touch; `undefined` where no rule says so. */
  readonly leastTouch: Measure | undefined;
}

/** How near a screener may stand, in normal steps; no book gives metres. */
export interface ScreenRules {
  /** To a defender who cannot see him. */
  readonly blindSideSteps: Measure;
  /** To a defender on the move: at least and at most. */
  readonly movingSteps: { readonly least: Measure; readonly most: Measure };
}

/** One rule book, dated: the same book of another year is another record. */
export interface RuleSet {
  readonly id: RuleSetId;
  /** As a coach says it. */
  readonly name: string;
  /** The editions the values come from. */
  readonly edition: string;
  readonly court: CourtMeasures;
  readonly counts: Counts;
  readonly throwIn: ThrowInRules;
  readonly clock: ClockRules;
  readonly screens: ScreenRules;
  /** The half line belongs to the backcourt. */
  readonly halfLineIsBackcourt: Sourced<boolean>;
  /** What a reader should know of how sure this record is. */
  readonly remarks: readonly { readonly text: string; readonly source: Source }[];
}
