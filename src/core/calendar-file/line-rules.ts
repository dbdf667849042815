import type { ContentLine } from "./content-lines.ts";
import type { Report } from "./faults.ts";
import { isDay, isDuration, isPeriod, isTime, timeType } from "./values.ts";

/** Properties of RFC 5545 and of those that add to it: RFC 7986, RFC 7808, RFC 9073, RFC 9074, RFC 9253. */
const properties = new Set(
  `CALSCALE METHOD PRODID VERSION ATTACH CATEGORIES CLASS COMMENT DESCRIPTION GEO LOCATION PERCENT-COMPLETE PRIORITY
  RESOURCES STATUS SUMMARY COMPLETED DTEND DUE DTSTART DURATION FREEBUSY TRANSP TZID TZNAME TZOFFSETFROM TZOFFSETTO
  TZURL ATTENDEE CONTACT ORGANIZER RECURRENCE-ID RELATED-TO URL UID EXDATE EXRULE RDATE RRULE ACTION REPEAT TRIGGER
  CREATED DTSTAMP LAST-MODIFIED SEQUENCE REQUEST-STATUS NAME REFRESH-INTERVAL SOURCE COLOR IMAGE CONFERENCE TZUNTIL
  TZID-ALIAS-OF ACKNOWLEDGED PROXIMITY LOCATION-TYPE PARTICIPANT-TYPE RESOURCE-TYPE CALENDAR-ADDRESS STYLED-DESCRIPTION
  STRUCTURED-DATA CONCEPT LINK REFID`.split(/\s+/),
);
const texts = new Set(
  "SUMMARY DESCRIPTION LOCATION COMMENT CONTACT UID PRODID TZNAME TZID RELATED-TO NAME".split(" "),
);
const textLists = new Set(["CATEGORIES", "RESOURCES"]);
const times = new Set(
  "DTSTART DTEND DUE RECURRENCE-ID EXDATE RDATE DTSTAMP CREATED LAST-MODIFIED COMPLETED".split(" "),
);
const severalValues = new Set(["MEMBER", "DELEGATED-FROM", "DELEGATED-TO", "DISPLAY", "FEATURE"]);

/** A TEXT with each of \ ; , and a line break escaped, and nothing else. */
const isEscaped = (text: string): boolean => /^(?:[^\\;,]|\\[\\;,nN])*$/s.test(text);
const isEscapedList = (text: string): boolean => /^(?:[^\\;]|\\[\\;,nN])*$/s.test(text);

/** Rules that one line alone can break. RFC 5545, sections 3.1 to 3.3. */
export function checkLine(line: ContentLine, report: Report): void {
  const { name, value, params } = line;
  if (!properties.has(name) && !name.startsWith("X-")) report("name-form");
  for (const [param, values] of Object.entries(params))
    if (values.length > 1 && !severalValues.has(param)) report("param-quote");
  if (texts.has(name) && !isEscaped(value)) report("text-escape");
  if (textLists.has(name) && !isEscapedList(value)) report("text-escape");
  if (times.has(name)) checkTimes(line, report);
  if (name === "DURATION" && !isDuration(value)) report("duration-form");
  if (name === "TRIGGER") checkTrigger(line, report);
  if (params.TZID !== undefined && /Z$/.test(value)) report("no-tzid-with-z");
}

function checkTimes(line: ContentLine, report: Report): void {
  const type = timeType(line);
  const fits = type === "DATE" ? isDay : type === "PERIOD" ? isPeriod : isTime;
  if (!line.value.split(",").every(fits)) report("datetime-form");
}

function checkTrigger(line: ContentLine, report: Report): void {
  if (timeType(line) === "DATE-TIME") {
    if (!isTime(line.value)) report("datetime-form");
  } else if (!isDuration(line.value)) report("duration-form");
}
