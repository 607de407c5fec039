/**
 * The places of a vehicle laid anew around one stay: what is recorded beside it makes room or takes up what it leaves, so
 * that the vehicle is in one place at every instant of its visit. The uses of spots go with the places they belong to.
 */
import type { Circumstances } from '../kernel/decision.js';
import { type Refused, refuse } from '../kernel/refusal.js';
import type { Rows } from '../kernel/rows.js';
import { type Destination, placeRow, spotOf, spotUseRow } from '../place/move-vehicle.js';
import { usedByOthers } from '../questions/place-and-work.js';
import type { Visit } from '../questions/visit.js';
import type { Row } from '../tables/tables.js';
import { applyEdits, placesOfVehicle, usesOfVehicle } from '../timeline/lanes.js';
import { clear, type Span, type TimelineEdit } from '../timeline/timeline.js';
import { keepCorrection, told } from './corrections.js';

type Place = Row<'place'>;
type Use = Row<'spotUse'>;

const endOf = (span: Span): number => span.toAt ?? Infinity;
const isWithin = (part: Span, whole: Span): boolean => part.fromAt >= whole.fromAt && endOf(part) <= endOf(whole);

/** A neighbour takes up what the stay leaves: its row is void, and one like it reaches as far. */
function stretched(place: Place, span: Span): TimelineEdit[] {
  return [
    { do: 'void', id: place.id },
    { do: 'insert', like: place.id, span },
  ];
}

/**
 * The edits of the other places when the stay that was `before` (null: there was none) is `span`. Refused where it leaves a
 * time of which nothing says where the vehicle was.
 */
export function roomFor(places: readonly Place[], before: Place | null, span: Span): TimelineEdit[] | Refused {
  const others = places.filter((one) => one.id !== before?.id);
  const edits = clear(others, span);
  if (!before) return edits;
  if (before.fromAt < span.fromAt) {
    const previous = others.find((one) => one.toAt === before.fromAt && one.jobId === before.jobId);
    if (!previous) return refuse('time.nowhere', told({ fromAt: before.fromAt, toAt: span.fromAt }));
    edits.push(...stretched(previous, { fromAt: previous.fromAt, toAt: span.fromAt }));
  }
  if (span.toAt !== null && span.toAt < endOf(before)) {
    const next = others.find((one) => one.fromAt === before.toAt && one.jobId === before.jobId);
    if (!next) return refuse('time.nowhere', told({ fromAt: span.toAt, toAt: before.toAt }));
    edits.push(...stretched(next, { fromAt: span.toAt, toAt: next.toAt }));
  }
  return edits;
}

/** What of the use of a spot is left, or how far it reaches, when its place becomes `piece`; null: nothing. */
function useIn(use: Use, place: Place, piece: Span): Span | null {
  const fromAt = use.fromAt === place.fromAt ? piece.fromAt : Math.max(use.fromAt, piece.fromAt);
  const end = endOf(use) === endOf(place) ? endOf(piece) : Math.min(endOf(use), endOf(piece));
  return fromAt < end ? { fromAt, toAt: end === Infinity ? null : end } : null;
}

/** The edits of the spot uses that go with those of the places. */
function editsOfUses(rows: Rows, vehicleId: string, edits: readonly TimelineEdit[]): TimelineEdit[] {
  const usesOf = (placeId: string) => {
    const place = rows.get('place', placeId);
    return { place, uses: usesOfVehicle(rows, vehicleId).filter((use) => isWithin(use, place)) };
  };
  return edits.flatMap((edit): TimelineEdit[] => {
    switch (edit.do) {
      case 'void':
        return usesOf(edit.id).uses.map((use) => ({ do: 'void', id: use.id }));
      case 'close':
        return usesOf(edit.id)
          .uses.filter((use) => endOf(use) > edit.toAt)
          .map((use) =>
            use.fromAt >= edit.toAt ? { do: 'void', id: use.id } : { do: 'close', id: use.id, toAt: edit.toAt },
          );
      case 'insert': {
        if (edit.like === null) return [];
        const { place, uses } = usesOf(edit.like);
        return uses.flatMap((use) => {
          const span = useIn(use, place, edit.span);
          return span ? [{ do: 'insert' as const, like: use.id, span }] : [];
        });
      }
    }
  });
}

/** Rule 1: a spot that would be used when another vehicle had it. */
function againstSpots(
  rows: Rows,
  vehicleId: string,
  uses: readonly { readonly bayId: string; readonly spot: number; readonly span: Span }[],
): Refused | null {
  for (const { bayId, spot, span } of uses) {
    const [other] = usedByOthers(rows, bayId, spot, span, vehicleId);
    if (!other) continue;
    const jobNumber = rows.find('job', other.jobId)?.number ?? 0;
    return refuse('time.spotTaken', { jobNumber, spot, ...told(other) }, { table: 'job', id: other.jobId });
  }
  return null;
}

export interface Laid {
  readonly visit: Visit;
  readonly before: Place | null;
  readonly to: Destination;
  readonly span: Span;
  readonly words: string;
}

/** Lays the stay; gives its row, or why it cannot have been so. What was there before stays readable, with the words. */
export function layStay(rows: Rows, at: Circumstances, { visit, before, to, span, words }: Laid): Place | Refused {
  const vehicleId = visit.vehicle.id;
  const room = roomFor(placesOfVehicle(rows, vehicleId), before, span);
  if (!Array.isArray(room)) return room;
  const edits: TimelineEdit[] = [...(before ? [{ do: 'void' as const, id: before.id }] : []), ...room];
  const useEdits = editsOfUses(rows, vehicleId, edits);
  const spot = spotOf(to);
  const wanted = useEdits.flatMap((edit) => {
    if (edit.do !== 'insert' || edit.like === null) return [];
    const { bayId, spot: number } = rows.get('spotUse', edit.like);
    return [{ bayId, spot: number, span: edit.span }];
  });
  const refused = againstSpots(rows, vehicleId, [...wanted, ...(spot ? [{ ...spot, span }] : [])]);
  if (refused) return refused;
  const row = rowOf(at, visit, before, to);
  const others = new Map(
    room.flatMap((edit) => (edit.do === 'insert' ? [] : ([[edit.id, rows.get('place', edit.id)]] as const))),
  );
  const left = applyNoted(rows, at, edits);
  applyEdits(rows, at, 'place', [{ do: 'insert', like: null, span }], row);
  applyEdits(rows, at, 'spotUse', useEdits);
  if (spot) applyEdits(rows, at, 'spotUse', [{ do: 'insert', like: null, span }], spotUseRow(at, visit, spot));
  const laid = rows.get('place', row.id);
  keepCorrection(rows, at, { kind: before ? 'replaced' : 'added', table: 'place', before, after: laid, words });
  for (const [id, old] of others) {
    const now = rows.get('place', id);
    const after = now.void ? (left.get(id) ?? null) : now;
    keepCorrection(rows, at, { kind: now.void ? 'replaced' : 'ended', table: 'place', before: old, after, words });
  }
  return laid;
}

/** Carries out the edits; gives, for each place that is void now, the first row that is left of it. */
function applyNoted(rows: Rows, at: Circumstances, edits: readonly TimelineEdit[]): ReadonlyMap<string, Place> {
  const left = new Map<string, Place>();
  for (const edit of edits) {
    // The stay itself is put in by its own row.
    if (edit.do === 'insert' && edit.like === null) continue;
    const known = new Set(rows.list('place').map((one) => one.id));
    applyEdits(rows, at, 'place', [edit]);
    const [made] = rows.list('place', (one) => !known.has(one.id));
    if (edit.do === 'insert' && edit.like !== null && made && !left.has(edit.like)) left.set(edit.like, made);
  }
  return left;
}

/** How it got there, its load and the rest stay as they were said; only where and when are said anew. */
function rowOf(at: Circumstances, visit: Visit, before: Place | null, to: Destination) {
  const said = placeRow(at, visit, to);
  if (!before) return said;
  const { version: _version, void: _void, fromAt: _fromAt, toAt: _toAt, ...old } = before;
  const { id, recordedAt, effectiveAt, byId, device, kind, bayId, spot } = said;
  return { ...old, id, recordedAt, effectiveAt, byId, device, kind, bayId, spot };
}
