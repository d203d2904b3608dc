/* An invented rehearsal in the project's own plain form: short, so that tests of the command line are quick. */
export const REHEARSAL = `Station, invented

[0:02] Announcer: You may begin now.
[0:04] Candidate: Hello, my name is Ana and I'm the pharmacist today. Can I check your name and your date of birth please?
[0:12] Patient: Sam Example, the first of May.
[0:16] Candidate: Thank you. Are you allergic to any medicines, and do you take anything else?
[0:22] Patient: No, nothing.
[0:24] Candidate: Wash your hands first. Tilt your head back and look up, and pull the lower lid down to make a little pocket. Put one drop into each eye once a day in the evening.
[0:44] Patient: How long does the bottle last?
[0:46] Candidate: Throw it away four weeks after you open it. Do not let the tip touch your eye.
[1:02] Announcer: Time is up.
`;
