// The shapes that the API answers with: those of docs/formats/openapi.json, by short names.
// The closing view's own details are in view.ts.
import type { components } from "../../generated/api";

type Schemas = components["schemas"];

export type Role = Schemas["Role"];
export type Step = Schemas["Step"];
export type SecretKind = Schemas["SecretKind"];
export type Me = Schemas["Me"];
export type Person = Schemas["Person"];
export type DeviceLine = Schemas["Device"];
export type PlantView = Schemas["Plant"];
export type BoilerLine = Schemas["Boiler"];
export type Receipt = Schemas["Receipt"];
export type Head = Schemas["Head"];
export type FeedView = Pick<Schemas["FeedHead"], "device" | "device_seq" | "hash" | "seen">;
export type Permit = Schemas["Permit"];
export type Rule = Schemas["Rule"];
export type Rules = Schemas["Rules"];
export type SiteLimits = { is_set: boolean; limits: Record<string, unknown> };
export type RepairPlan = Schemas["RepairPlan"];
export type Sheet = Schemas["Sheet"];
export type SheetSection = Schemas["SheetSection"];
export type SheetFigure = Schemas["SheetFigure"];
export type SheetRequest = Schemas["SheetRequest"];
export type TracePreview = Schemas["TracePreview"];
export type Gauge = Schemas["Gauge"];
export type FactShown = Schemas["FactShown"];
export type EventFacts = Schemas["EventFacts"];
export type EnrolmentCode = Schemas["EnrolmentCode"];

/** Core tells its problems in the same shape, without file and line. */
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

/** A word to choose from, as it stands in facts and as a person reads it. */
export interface Word {
  token: string;
  text: string;
}
