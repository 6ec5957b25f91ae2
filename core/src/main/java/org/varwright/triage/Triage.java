package org.varwright.triage;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.varwright.bank.Bank;
import org.varwright.network.Supply;
import org.varwright.unbalance.Assumptions;
import org.varwright.unbalance.Locate;
import org.varwright.unbalance.Locator;

/**
 * What is likely behind a symptom, and what to do first.
 *
 * <p><b>Model.</b> Causes by symptom in the order of common practice; a relay reading is located in the network and puts first what explains it (UNB-6). Whether the
 * bank may run on follows from the voltage that the located failure leaves on its neighbours; where that can't be worked out the answer is no or undecided.
 * <p><b>Not modelled.</b> How often each cause really is: nobody counted.
 *
 * @param bank the bank
 * @param question what was asked
 * @param stages that it may be about
 * @param causes the likelier first
 * @param runOn whether the bank may stay or go back in service
 * @param bring what to bring
 * @param access compartments that would have to be opened, for an order of work; empty where none
 * @param fetch records to fetch
 * @param located what explains the relay's reading; empty where there is none
 * @param unknown what can't be said and why
 */
public record Triage(
        Bank bank,
        TriageQuestion question,
        List<String> stages,
        List<Cause> causes,
        RunOn runOn,
        List<Bring> bring,
        List<String> access,
        List<String> fetch,
        Optional<Locate> located,
        List<String> unknown) {
    public Triage {
        stages = List.copyOf(stages);
        causes = List.copyOf(causes);
        bring = List.copyOf(bring);
        access = List.copyOf(access);
        fetch = List.copyOf(fetch);
        unknown = List.copyOf(unknown);
    }

    /** The answer for a bank. */
    public static Triage of(Bank bank, TriageQuestion question) {
        Scene scene = Scene.of(bank, question);
        Supply supply = question.busVolts().isPresent()
                ? new Supply.Balanced(question.busVolts().getAsDouble())
                : Supply.nominal(bank.system());
        Optional<Locate> located =
                question.sighting().map(s -> Locator.locate(bank, Map.of(), supply, Assumptions.USUAL, s));
        List<Cause> causes = ranked(new Catalogue(scene).of(question.symptom()), located);
        Set<String> access = new LinkedHashSet<>();
        causes.forEach(c -> c.checks().forEach(i -> access.addAll(i.compartments())));
        BringList bring = new BringList(scene, access);
        List<String> unknown = new ArrayList<>(bring.missing());
        if (bank.isolation().isEmpty()) {
            unknown.add(
                    "isolation is not given: how the bank is fed, entered and locked can't be said, and no order of work made");
        }
        return new Triage(
                bank,
                question,
                scene.stageNames(),
                causes,
                new RunOnRule(scene, supply, located).of(question.symptom()),
                bring.items(question.symptom()),
                List.copyOf(access),
                Fetch.of(scene, question.symptom()),
                located,
                unknown);
    }

    /** What to check, from the desk first, then from outside, then what needs an order of work; each once. */
    public List<Inspection> firstChecks() {
        Set<Inspection> each = new LinkedHashSet<>();
        causes.forEach(c -> each.addAll(c.checks()));
        return each.stream().sorted(Comparator.comparing(Inspection::from)).toList();
    }

    /** What explains the reading goes first; what the reading speaks against goes behind. */
    private static List<Cause> ranked(List<Cause> causes, Optional<Locate> located) {
        if (located.isEmpty()) {
            return causes;
        }
        return causes.stream()
                .map(c -> Reading.weighed(c, located.get()))
                .sorted(Comparator.comparing(Cause::rank))
                .toList();
    }
}
