/** A small rubric that can be marked with as it is; `{schema}` and `{id}` are filled in. Its station is invented. */
export const STARTER = `# yaml-language-server: $schema={schema}
# A rubric for one station. The line above gives an editor its help with fields; it holds the way from this file to
# the schema. 'saidwell rubric check FILE' checks the rubric, 'saidwell mark TRANSCRIPT --rubric FILE' marks with it.
saidwell: rubric@1
# Lower case, words joined by hyphens. So are all ids below: they are what results and comparisons go by.
id: {id}
title: Tablets once a day, first supply
# Raise it when the marks could change.
version: 1
# Whose guidance the station follows: ISO 3166 codes, or any.
jurisdiction: [any]

scenario:
  # What the candidate is asked to do, as the station card says it.
  task: >-
    An adult collects a first supply of a tablet that is taken once a day. Explain how to take it and what to do when a
    dose is missed.
  counselled: patient # or carer
  # Where it takes place; people read it, nothing depends on it. So may most texts of a rubric: title, task, note, reason.
  setting: At the counter of a pharmacy
  # What holds in this station, in words of your own: an item with 'when' applies only where its conditions stand here.
  # 'child' and 'adult' tell the patient's age as well: what is told of people of another age is then not counted.
  conditions: [adult, first-supply]
  # What the supplied label says. A quantity here can be asked for below.
  label:
    dose: { text: Take ONE tablet each morning, quantity: { value: 1, unit: tablet } }
  # What the patient may ask, in several wordings, and which items answer it.
  questions:
    - id: forgot
      says:
        - what if i forget one
        - what do i do if i miss a dose
        - suppose i forget to take it
      answered_by: [missed-dose]
    # What no item holds has its answer here, and what would be wrong to reply.
    - id: halves
      says:
        - can i cut it in half
        - is it all right to break them in two
        - may i halve the tablet
      answer:
        - yes you can halve it along the line
        - it breaks in two along the line
      incorrect:
        - never break it, swallow it whole
        - halving it makes it useless

# A clock in quotes ("7:00"), '7 min', or seconds.
time: { limit: 7 min, target: 6 min }

# More ways to say things may stand in a file of their own, by item and element, see "Rubrics" in the README:
# responses: responses/{id}.yaml
# What a program learnt from marked sayings about this rubric; the shipped rubrics have such a file, and nobody edits it.
# learnt: learnt/{id}.json

# What facts are taken from. Each fact below names one of these, or 'common practice, no source'.
sources:
  patient-identification:
    body: WHO Collaborating Centre for Patient Safety Solutions
    title: Patient Safety Solutions, volume 1, solution 2 - Patient Identification
    year: 2007
    detail: At least two identifiers # page, section or number; may be left out

sections:
  # A section may also be a block of items that many stations share: shipped:opening, shipped:checking-understanding,
  # shipped:storage, shipped:closing, or a file beside this one. Its items can be dropped and their fields replaced:
  # - include: shipped:opening
  #   title: Before you start
  #   drop: [agreement]
  #   override: { identity: { critical: true } }
  - id: opening
    title: Opening
    items:
      # The long form: several elements, each earned by itself.
      - id: identity
        label: Checks who the patient is by two identifiers
        # tell (left out), ask, ask-openly, teach-back, invite-questions or summary.
        kind: ask
        # Missing or wrong, a critical item decides the result by the pass rule below.
        critical: true
        # How many elements make it complete (left out, all), and the fewest for a pass of it.
        needs: all
        minimum: 2
        # Where it comes from, where it holds, and when somebody must look at it again.
        fact: { source: patient-identification, jurisdiction: [any], review_by: 2027-12-31 }
        elements:
          - id: name
            label: Asks for the name
            # Without it the item is neither complete nor met, whatever else of it was said.
            essential: true
            # Acceptable responses, in several people's words: a|b for either word, (a b|c) for either group of words.
            say:
              - can i take your full name
              - what's your name please
              - could you tell me your name
              - who am i speaking to
          - id: second-identifier
            label: Asks for the date of birth or address
            say:
              - what's your date of birth
              - and your address|postcode please
              - when were you born
              - could you confirm your date of birth

  - id: taking-it
    title: Taking it
    items:
      # The short form: an item of one element.
      - id: how-many
        label: One tablet each morning
        # Its share of the total; left out, 1.
        weight: 2
        fact: { source: "common practice, no source", jurisdiction: [any], review_by: 2027-12-31 }
        # {quantity} stands where the number is said, with its unit: "one tablet".
        say:
          - take {quantity} every morning
          - "{quantity} each morning"
          - you have {quantity} in the morning
          - it's {quantity} once a day at breakfast
        # The number that the words must carry. A wrong number is incorrect, not absent.
        quantity: { label: dose } # or { value: 1, unit: tablet }

      - id: upright
        label: Stays upright for half an hour to an hour afterwards
        # Only where these conditions of the scenario hold; 'not first-supply' where one must not. Left out, always.
        when: [first-supply]
        # What it applies to, and a note, may be left out.
        fact: { source: "common practice, no source", jurisdiction: [any], applies_to: tablets of this invented kind, review_by: 2027-12-31, note: Made up for this starter. }
        say:
          - stay upright for {quantity} afterwards
          - don't lie down for {quantity} after you've taken it
          - sit or stand for {quantity} once you've swallowed it
        # A number, or [from, to]; how far off still counts, in the same unit; and which way more is right too: exact (left
        # out), at-least or at-most.
        quantity: { value: [30, 60], unit: minute, tolerance: 5, bound: exact }
        # What is right in another country: the sheet says that it differs from this station, and it is never unsafe.
        elsewhere:
          - jurisdiction: [XX]
            quantity: { value: 10, unit: minute }
            # Phrases of its own may be given with 'say:'; left out, those of the element count.
            note: Ten minutes in an invented country.

      - id: swallowing
        label: Helps with tablets that are hard to swallow
        # Only where the patient says one of these; never said, the item is outside the marks.
        cue:
          patient:
            - i can't swallow tablets
            - tablets stick in my throat
            - i find big tablets hard to get down
        # full, half or none: after the patient asked; after a prompt; where the patient said it and was told it is right.
        credit: { after_question: full, prompted: half, confirmed: half }
        say:
          - have a mouthful of water before you swallow it
          - lean forward a little as you swallow the tablet
          - a sip of water first helps a tablet slide down

      - id: missed-dose
        label: What to do when a dose is missed
        fact: { source: "common practice, no source", jurisdiction: [any], review_by: 2027-12-31 }
        # For the list of changes that a candidate gets.
        advice: Say what to do about a missed dose before the patient has to ask.
        elements:
          - id: skip-it
            label: Leave out the missed one and go on as usual
            say:
              - leave out the one you missed
              - skip the missed|forgotten dose|tablet|one
              - just carry on with the next one as usual
              - forget the missed one and take the next at the usual time
            # Passages that must and must not earn it; 'saidwell rubric check' runs them.
            examples:
              earns: ["Skip the missed one."]
              misses: ["Swallow it with a glass of water."]
          - id: not-double
            label: Never two to make up for it
            say:
              - don't take two to make up for it
              - never double the dose up
              - don't take a double dose
            # Words without which nothing counts, one notion an entry.
            must:
              - (two|double)
            # Words in the same clause that mean something else: a number of times is no number of tablets.
            not_with:
              - two times
            incorrect:
              - take both at once so that you catch up

      - id: warning-sign
        label: A rash that spreads must alarm
        fact: { source: "common practice, no source", jurisdiction: [any], review_by: 2027-12-31 }
        # Who says that it is nothing, normal or harmless states it wrongly.
        red_flag: true
        say:
          - ring us if a rash spreads
          - a spreading rash
          - if a rash starts to spread stop and ring
        # What is wrong to say here; plain denials and wrong numbers are found without.
        incorrect:
          - put some cream on a spreading rash and carry on

# Pairs of items whose order matters.
order:
  - first: identity
    then: how-many
    severity: major
    reason: Advice for the wrong person does harm.

# What must never be said. A sheet tells which of these it found, never that a talk was safe.
unsafe:
  - id: double-up
    label: Tells the patient to take two after a missed dose
    severity: major # minor, moderate or major
    say:
      - take two the next day to make up for it
      - double up the next day
      - just take two tomorrow
    # As those of an element; 'quantity', 'fact' and 'examples' may stand here as well.
    must:
      - (two|double)
    not_with:
      - (never|not)
    # Elements whose wrong statements ('incorrect') all amount to this: who is told of one has stated this as well.
    wrong_of: [missed-dose/not-double]
    # Elements that it states wrongly: who is found to have stated this is told of those as well.
    contradicts: [missed-dose/not-double]
    fact: { source: "common practice, no source", jurisdiction: [any], review_by: 2027-12-31 }
    examples:
      earns: ["If you forget it, take two the next day."]
      misses: ["Don't take two the next day."]
  - id: several-a-day
    label: Tells the patient to take several tablets a day
    severity: major
    say:
      - take {quantity} every day
      - you can have {quantity} a day
      - up to {quantity} in a day is fine
    quantity: { value: 2, unit: tablet, bound: at-least }

# The pass rule: per cent of the weighted total, critical items (all, or how many), unsafe statements still allowed, and
# whether running over the limit fails the station.
pass:
  minimum: 60
  critical: all
  unsafe: { major: 0, moderate: 0, minor: 1 }
  within_limit: false

# Who changed what and why, newest first.
history: []
`;
