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
  # What the supplied label says. A quantity here can be asked for below.
  label:
    dose: { text: Take ONE tablet each morning, quantity: { value: 1, unit: tablet } }
  # What the patient may ask, in several wordings, and which item answers it (or 'answer:' with phrases).
  questions:
    - id: forgot
      says:
        - what if i forget one
        - what do i do if i miss a dose
        - suppose i forget to take it
      answered_by: [missed-dose]

# A clock in quotes ("7:00"), '7 min', or seconds.
time: { limit: 7 min, target: 6 min }

# What facts are taken from. Each fact below names one of these, or 'common practice, no source'.
sources:
  patient-identification:
    body: WHO Collaborating Centre for Patient Safety Solutions
    title: Patient Safety Solutions, volume 1, solution 2 - Patient Identification
    year: 2007
    detail: At least two identifiers

sections:
  # A section may also be a block of items that many stations share: shipped:opening, shipped:checking-understanding,
  # shipped:storage, shipped:closing, or a file beside this one. Its items can be dropped and their fields replaced:
  # - include: shipped:opening
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
        weight: 2
        fact: { source: "common practice, no source", jurisdiction: [any], review_by: 2027-12-31 }
        # {quantity} stands where the number is said.
        say:
          - take {quantity} every morning
          - "{quantity} each morning"
          - you have {quantity} in the morning
          - it's {quantity} once a day at breakfast
        # The number that the words must carry. A wrong number is incorrect, not absent.
        quantity: { label: dose } # or { value: 1, unit: tablet }

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
    must:
      - (two|double)
    not_with:
      - (never|not)
    fact: { source: "common practice, no source", jurisdiction: [any], review_by: 2027-12-31 }

# The pass rule: per cent of the weighted total, critical items (all, or how many), unsafe statements still allowed.
pass:
  minimum: 60
  critical: all
  unsafe: { major: 0, moderate: 0 }

# Who changed what and why, newest first.
history: []
`;
