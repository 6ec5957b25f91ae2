/**
 * The job as an append-only list of events, and the rules that turn events into what stands now.
 *
 * <p>An event is one line of JSON. The line itself is what is kept, hashed and exchanged; it is never written anew. Each device chains its own lines: every line names
 * the hash of the one before it. Two devices that worked apart are merged by putting their lines together; nothing is lost, and what disagrees is shown until a person
 * decides. The same rules judge an event before it is written and when the log is read: an event that the rules refuse is kept, shown, and not counted.
 *
 * <pre>
 *   line ──▶ LoggedEvent ──▶ JobLog ──▶ Job (replayed) ──▶ JobJson, JobText
 *                                        ▲
 *            Job.propose(by, fact) ──▶ JobRules ──▶ Proposal.Accepted(line) | Refused(why)
 * </pre>
 */
@NullMarked
package org.varwright.job;

import org.jspecify.annotations.NullMarked;
