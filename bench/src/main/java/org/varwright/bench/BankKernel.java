package org.varwright.bench;

import java.util.List;
import java.util.Optional;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.varwright.bank.Bank;
import org.varwright.bankfile.BankFile;
import org.varwright.discharge.Discharge;
import org.varwright.fit.Fit;
import org.varwright.fit.FitInput;
import org.varwright.fit.FitResult;
import org.varwright.interlock.SpinSubject;
import org.varwright.interlock.Verification;
import org.varwright.isolation.Access;
import org.varwright.isolation.Plan;
import org.varwright.isolation.PlanRequest;

/** What is asked of a whole bank: the example of the checkout, and a fit of 144 positions. */
@State(Scope.Benchmark)
public class BankKernel {
    private final byte[] file = Examples.bytes(Examples.TAMARACK);
    private final Bank bank = BankFile.read("bank.yaml", file).requireBank();
    private final SpinSubject scheme = SpinSubject.of(bank).orElseThrow();
    private final PlanRequest request = PlanRequest.to(List.of(Examples.TAMARACK_COMPARTMENT));
    private final FitInput fit = FitSubject.linear();

    /** The YAML file read, every rule checked. */
    @Benchmark
    public Bank readBankFile() {
        return BankFile.read("bank.yaml", file).requireBank();
    }

    /** Every state of the scheme, state by state. */
    @Benchmark
    public Verification verify() {
        return scheme.oneByOne();
    }

    /** The order of work for one bay, in and back, with its single faults. */
    @Benchmark
    public Plan plan() {
        return Access.plan(bank, request);
    }

    /** Opening pole by pole, the decay and the wait of every stage. */
    @Benchmark
    public Discharge discharge() {
        return Discharge.of(bank, Optional.empty());
    }

    /** Three units of 144 replaced, up to two extra lifts, proven best. */
    @Benchmark
    public FitResult fit() {
        return Fit.plan(fit);
    }
}
