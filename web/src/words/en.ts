// What stands on the pages beside the texts that come from the server: names of pages and fields,
// what buttons say. No figure and no sentence about a closing is made here. Start reading at `en`.

const en = {
  program: "Steamworthy",
  to_the_page: "To the page's content",
  pages: "Pages",
  wait: "Waiting for the answer",
  again: "Try again",
  cancel: "Cancel",
  back: "Back",
  done: "Done",
  yes: "Yes",
  no: "No",
  print: "Print",
  note: "Remark",
  unreachable: "The program cannot be reached.",
  unreachable_long:
    "What stands here is what was last known. What you enter is kept on this tablet and sent as soon as the program answers.",
  no_words: "The program answered something that this page cannot read.",
  nowhere: "There is no page at this address.",
  unsent: (count: number) =>
    count === 1 ? "1 entry is kept on this tablet and not yet known to be sent" : `${count} entries are kept on this tablet and not yet known to be sent`,
  refused_entries: "Not taken by the program",
  send_now: "Send now",
  sign_in: {
    title: "Sign in",
    who: "Who are you",
    choose: "Choose your name",
    secret: "PIN, badge or passphrase",
    go: "Sign in",
    out: "Sign out",
    not_enrolled: "This tablet is not enrolled: you can look, but what you enter has nobody to sign it. Ask an engineer or the lead hand for a one-time link.",
  },
  enrol: {
    title: "Enrol this tablet",
    means:
      "This tablet makes a key of its own, which never leaves it. With it, it signs what is entered here.",
    code: "One-time code",
    name: "What people call this tablet",
    name_hint: "such as: tablet at the boiler front",
    go: "Make the key and enrol",
    done: "This tablet is enrolled.",
    insecure:
      "This browser makes no keys on this address. Open the page over https, or on the machine itself.",
  },
  plant: {
    title: "The boilers",
    none: "No boiler is described yet.",
    open: "Open the closing",
    begin: "Begin a closing",
    begin_sure: "A closing is one closing of one boiler, from shut down to taken over.",
    earlier: "Earlier closings",
  },
  settings: {
    title: "Settings",
    units: "Units",
    si: "bar, °C, mm, litres",
    us: "psi, °F, inches, gallons",
    look: "Look",
    look_day: "Day",
    look_night: "Night",
    look_device: "As the tablet",
    here: "Kept on this tablet only",
  },
};

export type Words = typeof en;
export const words: Words = en;
