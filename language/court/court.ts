import type { Point } from './point.ts';
import { distance } from './point.ts';
import type { RuleSet, RuleSetId } from './rule-set.ts';

export interface Rectangle {
  readonly left: number;
  readonly right: number;
  /** The lower y: nearer the baseline behind the basket attacked. */
  readonly bottom: number;
  readonly top: number;
}

/** The three-point line around the basket attacked: two straight parts and an arc. */
export interface ThreeLine {
  readonly radius: number;
  readonly corner: number;
  /** The height at which the straight part meets the arc. */
  readonly joinY: number;
  /** From the middle line of the court to where the arc meets the straight part, seen from the ring, in radians. */
  readonly halfAngle: number;
}

/**
 * A floor in metres: the origin under the centre of the ring attacked, x to the right as the offence faces the basket, y towards
 * half court. Left is negative x.
 */
export interface Court {
  readonly rules: RuleSetId;
  readonly boundary: Rectangle;
  readonly lane: Rectangle;
  readonly baselineY: number;
  readonly farBaselineY: number;
  readonly halfLineY: number;
  readonly freeThrowLineY: number;
  readonly boardY: number;
  readonly boardWidth: number;
  readonly ring: Point;
  readonly ringRadius: number;
  readonly ringHeight: number;
  readonly farRing: Point;
  readonly farFreeThrowLineY: number;
  readonly three: ThreeLine | undefined;
  /** Inside edge of the no-charge arc. */
  readonly restrictedRadius: number | undefined;
  readonly centreCircleRadius: number;
  /** The mark on the sideline where the ball comes in after a time-out; where the rules have none, the middle of the front half. */
  readonly throwInMarkY: number;
  readonly lineWidth: number;
}

/** The floor a rule set describes. */
export function courtOf(rules: RuleSet): Court {
  const measures = rules.court;
  const baselineY = -measures.ringCentreToBaseline.value;
  const farBaselineY = baselineY + measures.length.value;
  const halfLineY = baselineY + measures.length.value / 2;
  const halfWidth = measures.width.value / 2;
  const halfLane = measures.laneWidth.value / 2;
  const freeThrowLineY = baselineY + measures.laneLength.value;
  return {
    rules: rules.id,
    boundary: { left: -halfWidth, right: halfWidth, bottom: baselineY, top: farBaselineY },
    lane: { left: -halfLane, right: halfLane, bottom: baselineY, top: freeThrowLineY },
    baselineY,
    farBaselineY,
    halfLineY,
    freeThrowLineY,
    boardY: baselineY + measures.boardToBaseline.value,
    boardWidth: measures.boardWidth.value,
    ring: { x: 0, y: 0 },
    ringRadius: measures.ringDiameter.value / 2,
    ringHeight: measures.ringHeight.value,
    farRing: { x: 0, y: 2 * halfLineY },
    farFreeThrowLineY: 2 * halfLineY - freeThrowLineY,
    three: threeLineOf(measures.threeRadius?.value, measures.threeCorner?.value),
    restrictedRadius: measures.restrictedRadius?.value,
    centreCircleRadius: measures.centreCircleRadius.value,
    throwInMarkY: measures.throwInMark === undefined ? halfLineY / 2 : baselineY + measures.throwInMark.value,
    lineWidth: measures.lineWidth.value,
  };
}

function threeLineOf(radius: number | undefined, corner: number | undefined): ThreeLine | undefined {
  if (radius === undefined || corner === undefined) return undefined;
  const joinY = Math.sqrt(Math.max(0, radius * radius - corner * corner));
  return { radius, corner, joinY, halfAngle: Math.atan2(corner, joinY) };
}

/** How far behind the three-point line a point is, in metres; negative inside it, `undefined` where there is no line. */
export function metresBehindThree(court: Court, point: Point): number | undefined {
  if (court.three === undefined) return undefined;
  if (point.y <= court.three.joinY) return Math.abs(point.x) - court.three.corner;
  return distance(court.ring, point) - court.three.radius;
}

/** Whether a point lies on the playing court; the lines are out (FIBA 23.1, NBA 8-I, NCAA 4-23, NFHS 7-1). */
export function inBounds(court: Court, point: Point): boolean {
  const { left, right, bottom, top } = court.boundary;
  return point.x > left && point.x < right && point.y > bottom && point.y < top;
}

/** Whether a point lies in the lane the three seconds are counted in; its lines belong to it. */
export function inLane(court: Court, point: Point): boolean {
  const { left, right, bottom, top } = court.lane;
  return point.x >= left && point.x <= right && point.y >= bottom && point.y <= top;
}

/** Whether a point lies wholly in front of the half line, which belongs to the backcourt. */
export function inFrontcourt(court: Court, point: Point): boolean {
  return point.y < court.halfLineY - court.lineWidth / 2;
}
