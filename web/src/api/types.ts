// The shapes that the API answers with. Every text that a person reads comes rendered; pages make
// no sentence and no unit of their own.

export interface Word {
  token: string;
  text: string;
}

export interface Problem {
  code: string;
  field?: string;
  found?: string;
  accepted?: string;
  message: string;
}

export interface Outstanding {
  check: string;
  subject: string;
  reason: string;
  remedy: string;
  role: string;
  role_text: string;
  overridable_by: string[];
}

/** The one shape in which the API says that something went wrong. */
export interface ApiProblem {
  code: string;
  message: string;
  problems?: Problem[];
  outstanding?: Outstanding[];
}

export interface Me {
  person: string;
  name: string;
  roles: Word[];
  device: { device: string; name: string } | null;
  plant: string;
}

export interface PersonName {
  who: string;
  name: string;
}

export interface ClosingLine {
  closing: string;
  stage_text: string;
  sentence: string;
  since_ms: number;
  ended: boolean;
}

export interface BoilerLine {
  tag: string;
  name: string;
  sentence: string;
  waiting: string;
  closings: ClosingLine[];
}

export interface PlantView {
  plant: string;
  name: string;
  boilers: BoilerLine[];
}

export interface Receipt {
  id: string;
  intake_no: number;
  doubled: boolean;
}

export interface Head {
  device: string;
  device_seq: number;
  hash: string;
}

/** The end of this device's own feed in a closing, and the heads that a new fact must name. */
export interface FeedView {
  device: string;
  device_seq: number;
  hash: string;
  seen: Head[];
}
