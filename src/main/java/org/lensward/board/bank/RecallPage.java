package org.lensward.board.bank;

import java.time.Clock;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.Patient;
import org.hl7.fhir.r4.model.Reference;
import org.lensward.board.api.BankApi;
import org.lensward.board.api.BankDesk;
import org.lensward.board.api.Found;
import org.lensward.board.page.Page;
import org.lensward.board.store.StoreWatch;
import org.lensward.flow.RecordClient;
import org.lensward.lens.stock.LensKind;
import org.lensward.lens.stock.LensUnit;
import org.lensward.lens.stock.UnitState;
import org.lensward.record.Shelf;
import org.lensward.record.bank.Recall;
import org.lensward.record.bank.Recall.RecalledUnit;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;

/** Recall by lot: where each carton lies, who is to have it, who has it in an eye, and whether the list may be incomplete. */
@Page
public final class RecallPage {

    private final BankDesk bank;
    private final StoreWatch watch;
    private final SheetMaker maker;
    private final RecordClient client;
    private final Clock clock;

    public RecallPage(BankDesk bank, StoreWatch watch, SheetMaker maker, RecordClient client, Clock clock) {
        this.bank = bank;
        this.watch = watch;
        this.maker = maker;
        this.client = client;
        this.clock = clock;
    }

    @GetMapping("/bank/recall")
    String recall(@RequestParam Optional<String> lot, @RequestParam Optional<String> device, Model model) {
        Optional<String> asked = lot.map(String::strip).filter(each -> !each.isEmpty());
        model.addAttribute("recall", asked.map(each -> sheet(found(each, device))));
        model.addAttribute("lot", asked.orElse(""));
        model.addAttribute("device", said(device).orElse(""));
        return "recall";
    }

    @PostMapping("/bank/recall/quarantine")
    String quarantine(
            @RequestParam String lot, @RequestParam Optional<String> device, @RequestParam String reason, Model model) {
        BankApi.Deed deed = new BankApi.Deed(
                "", Optional.empty(), Optional.empty(), Optional.of(reason), Optional.empty(), Optional.empty());
        bank.quarantine(bank.recall(lot, said(device)), deed);
        model.addAttribute("done", true);
        return recall(Optional.of(lot), device, model) + " :: content";
    }

    private static Optional<String> said(Optional<String> device) {
        return device.map(String::strip).filter(each -> !each.isEmpty());
    }

    private record Answer(Recall recall, String device, Shelf people) {}

    private Answer found(String lot, Optional<String> device) {
        Recall recall = bank.recall(lot, said(device));
        List<String> patients = recall.units().stream()
                .flatMap(each -> each.patients().stream())
                .distinct()
                .toList();
        return new Answer(
                recall,
                said(device).orElse(""),
                new Shelf(patients.isEmpty() ? new Bundle() : client.gather(patients)));
    }

    private RecallSheet sheet(Answer answer) {
        Names names = watch.known().map(maker::names).orElseGet(() -> new Names(new Shelf(new Bundle())));
        Predicate<RecalledUnit> inEye = RecalledUnit::isImplanted;
        Predicate<RecalledUnit> gone = inEye.negate().and(each -> is(each, UnitState.WASTED));
        Predicate<RecalledUnit> promised =
                inEye.negate().and(each -> is(each, UnitState.RESERVED) || is(each, UnitState.PICKED));
        Recall recall = answer.recall();
        return new RecallSheet(
                recall.lot(),
                answer.device(),
                maker.time(clock.instant()),
                lines(answer, names, inEye),
                lines(answer, names, promised),
                lines(answer, names, inEye.or(gone).or(promised).negate()),
                lines(answer, names, gone),
                (int) recall.usable().count(),
                recall.findings().stream().map(Found::of).toList());
    }

    private static boolean is(RecalledUnit carton, UnitState state) {
        return carton.unit().filter(unit -> unit.state() == state).isPresent();
    }

    private static List<RecallSheet.Line> lines(Answer answer, Names names, Predicate<RecalledUnit> which) {
        return answer.recall().units().stream()
                .filter(which)
                .map(each -> line(each, names, answer.people()))
                .toList();
    }

    private static RecallSheet.Line line(RecalledUnit each, Names names, Shelf people) {
        List<String> wearers = each.patients().stream()
                .map(patient -> people.find(Patient.class, new Reference(patient))
                        .map(Names::words)
                        .orElse(patient + ", not in the record"))
                .toList();
        Optional<String> taker = each.unit().flatMap(LensUnit::heldFor).map(names::patient);
        return new RecallSheet.Line(
                Names.id(each.evidence().resource()),
                each.unit().map(LensKind::of).map(names::lens),
                each.unit().flatMap(unit -> unit.identity().serial()).orElse("-"),
                each.certain(),
                each.location().map(names::place).orElse("not recorded"),
                each.unit().map(unit -> unit.state().code()),
                wearers.isEmpty() ? taker.stream().toList() : wearers);
    }
}
