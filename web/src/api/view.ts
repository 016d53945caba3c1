// Where a closing stands, as docs/formats/closing-view.md has it. Start reading at ClosingView.
import type { Outstanding } from "./types";

export interface ClearanceTexts {
  step: string;
  step_text: string;
  subject: string;
  up_to_bar_gauge?: number;
  up_to_text?: string;
  permits_text: string;
  lapses_when_text: string;
}

export interface Clearance extends ClearanceTexts {
  given_at_ms: number;
  by: string;
  second: string;
  stands: boolean;
  lapsed_text?: string;
}

export interface Alarm {
  name: string;
  text: string;
  may_take: string[];
  taken: boolean;
}

export interface Air {
  good: boolean;
  within_limits?: boolean;
  old?: boolean;
  at_ms?: number;
  text: string;
}

export interface Count {
  good: boolean;
  people: number;
  things: number;
  two_names: boolean;
  looked_in: boolean;
  called: boolean;
  at_ms: number;
  age_min: number;
  /** What speaks against it; a device that has not been heard from since stands as the subject. */
  against: { check: string; subject: string }[];
}

export interface WayIn {
  tag: string;
  name: string;
  closure: string;
  open: boolean;
}

export interface Space {
  tag: string;
  name: string;
  side: string;
  people: string[];
  things: string[];
  attendant: string;
  air?: Air;
  count?: Count;
  was_open: boolean;
  is_closed: boolean;
  may_enter: boolean;
  ways_in: WayIn[];
}

export type MarkName =
  | "not_opened"
  | "open"
  | "cleaned"
  | "nipped_up"
  | "gap_measured"
  | "seen_dry"
  | "hardened_up"
  | "touched";

export interface Closure {
  tag: string;
  kind: string;
  shape?: string;
  width_mm?: number;
  height_mm?: number;
  mark: MarkName;
  mark_text: string;
  leak: string;
  flag: boolean;
  step_done: string[];
  look_on_steam: boolean;
}

export interface Part {
  tag: string;
  name: string;
  opened: number;
  done: number;
  rows: Closure[][];
}

export interface Header {
  tag: string;
  name: string;
  opened: boolean;
  looked_into: boolean;
  sealed: boolean;
}

export interface Bank {
  tag: string;
  name: string;
  tubes: number;
  passed: number;
  balls_out: number;
  not_clear: { row: number; tube: number }[];
}

export interface Isolation {
  tag: string;
  pipe: string;
  what_lies_behind: string;
  asked: string;
  tell_tale: string;
  how?: string;
  how_text?: string;
  double: boolean;
  tell_tale_dry: boolean;
  tried: boolean;
  text: string;
}

export interface Internal {
  tag: string;
  name: string;
  part: string;
  order: number;
  held_by: string;
  in: boolean;
  was_out: boolean;
  before: string[];
}

export interface Temporary {
  tag: string;
  name: string;
  kind: string;
  where: string;
  was_on: boolean;
  on: boolean;
  off: boolean;
  seen_off: boolean;
  must_be_off_before: string;
  must_be_off_before_text: string;
}

export interface Mounting {
  tag: string;
  name: string;
  kind: string;
  part: string;
  open?: boolean;
  shut?: boolean;
  moving_air?: boolean;
  ran_solid?: boolean;
  manned_by?: string;
  setting_text?: string;
  gag?: string;
  test_limit_text?: string;
  was_isolated: boolean;
  isolated: boolean;
  back: boolean;
  proved: boolean;
}

export interface TestGauge {
  tag: string;
  name: string;
  calibrated_until: string;
  fitted: boolean;
  at_zero: boolean;
  reading_bar_gauge?: number;
  reading_text?: string;
}

export interface Finding {
  name: string;
  where: string;
  what: string;
  severity: string;
  severity_text: string;
  disposition_text?: string;
  undecided: boolean;
}

export interface Leak {
  name: string;
  place: string;
  at: string;
  at_text: string;
  passes: string;
  passes_text: string;
  drops_per_min?: number;
  repaired: boolean;
  seen_dry: boolean;
  watched_hot: boolean;
  open: boolean;
}

export interface PlaceToLook {
  tag: string;
  name: string;
  kind: string;
  kind_text: string;
  part: string;
  about: string;
  count: number;
  level_m?: number;
  level_text?: string;
  pressure_bar_gauge?: number;
  pressure_text?: string;
  dry: boolean;
  leak: string;
}

export interface PostLine {
  post: string;
  post_text: string;
  who: string;
  manned: boolean;
  contact_lost: boolean;
}

export interface Temperature {
  tag: string;
  name: string;
  of: string;
  of_text: string;
  temperature_celsius: number;
  temperature_text: string;
  in_window?: boolean;
}

export interface IssuedSheet {
  sha256: string;
  rule: string;
  test_pressure_bar_gauge: number;
  test_pressure_text: string;
  never_above_bar_gauge: number;
  never_above_text: string;
  examination_pressure_bar_gauge?: number;
  examination_pressure_text?: string;
  safety_valves_in_place_below_text?: string;
  coldest_text?: string;
  warmest_text?: string;
  hold_text?: string;
}

export interface TestSoFar {
  water_in: boolean;
  filling: boolean;
  full: boolean;
  pump_runs: boolean;
  was_raised: boolean;
  holding: boolean;
  hold_met: boolean;
  test_valve_shut: boolean;
  pump_side_open: boolean;
  stop_word_checked: boolean;
  people_clear: boolean;
  hangers_pinned: boolean;
  hangers_free: boolean;
  filling_order_agreed: boolean;
  normalised: boolean;
  left_full: boolean;
  left_safe: boolean;
  call: string;
  given_by: string;
  received_by: string;
  fire_lit: boolean;
  level_text?: string;
  relief_text?: string;
  gauge_result?: string;
  gauge_result_text?: string;
}

export interface Happened {
  intake_no: number;
  id: string;
  kind: string;
  sentence: string;
  note?: string;
  photos?: string[];
  at_ms: number;
  at_text: string;
  person: string;
  device: string;
  device_seq: number;
}

export interface ClosingView {
  closing: string;
  boiler: string;
  boiler_name: string;
  description_sha256: string;
  intake_no: number;
  now_ms: number;
  stage: string;
  stage_text: string;
  since_ms: number;
  sentence: string;
  next_step: string;
  next_step_text: string;
  next: ClearanceTexts;
  pen: string;
  outstanding: Outstanding[];
  clearances: Clearance[];
  alarms: Alarm[];
  closures_opened: number;
  closures_left: number;
  spaces: Space[];
  parts: Part[];
  headers: Header[];
  banks: Bank[];
  isolations: Isolation[];
  internals: Internal[];
  temporaries: Temporary[];
  mountings: Mounting[];
  gauges: TestGauge[];
  findings: Finding[];
  leaks: Leak[];
  places: PlaceToLook[];
  posts: PostLine[];
  temperatures: Temperature[];
  sheet: IssuedSheet | null;
  test: TestSoFar;
  last: Happened[];
}
