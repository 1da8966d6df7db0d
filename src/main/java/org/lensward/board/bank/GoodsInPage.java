package org.lensward.board.bank;

import jakarta.servlet.http.HttpServletResponse;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.lensward.board.api.BankApi;
import org.lensward.board.api.BankDesk;
import org.lensward.board.api.Found;
import org.lensward.board.api.Refusal;
import org.lensward.board.page.Page;
import org.lensward.board.store.StoreState;
import org.lensward.board.store.StoreWatch;
import org.lensward.lens.label.CartonLabel;
import org.lensward.lens.stock.LensUnit;
import org.springframework.http.HttpStatus;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;

/** Goods in: scan the carton, read its power from the box, say where it is put. */
@Page
public final class GoodsInPage {

    private final BankDesk bank;
    private final StoreWatch watch;
    private final SheetMaker maker;
    private final CartonPage cartons;

    public GoodsInPage(BankDesk bank, StoreWatch watch, SheetMaker maker, CartonPage cartons) {
        this.bank = bank;
        this.watch = watch;
        this.maker = maker;
        this.cartons = cartons;
    }

    /**
     * What was filled in so far; what a form leaves out is empty.
     *
     * @param scans one line for each barcode
     * @param model the catalogue entry
     * @param power as read from the box
     * @param cylinder likewise
     * @param location where it is put
     * @param owner whose it is
     * @param consigned "yes" where it is on consignment
     */
    public record Form(
            String scans,
            String model,
            String power,
            String cylinder,
            String location,
            String owner,
            String consigned) {

        static final Form NOTHING = new Form("", "", "", "", "", "", "");

        public Form {
            scans = said(scans);
            model = said(model);
            power = said(power);
            cylinder = said(cylinder);
            location = said(location);
            owner = said(owner);
            consigned = said(consigned);
        }

        private static String said(@Nullable String text) {
            return text == null ? "" : text.strip();
        }

        List<String> barcodes() {
            return scans().lines()
                    .map(String::strip)
                    .filter(each -> !each.isEmpty())
                    .toList();
        }

        /** With one barcode more; a separator that no form can carry becomes the sign for it. */
        Form with(String scan) {
            String more = (scans() + "\n" + scan.replace('\u001d', '\u241d')).strip();
            return new Form(more, model(), power(), cylinder(), location(), owner(), consigned());
        }

        BankApi.Arrival arrival() {
            return new BankApi.Arrival(
                    barcodes(),
                    model(),
                    inDioptres(power()),
                    Optional.of(cylinder()).filter(each -> !each.isEmpty()).map(Form::inDioptres),
                    location(),
                    owner(),
                    consigned().equals("yes"),
                    "");
        }

        private static String inDioptres(String figure) {
            return figure.endsWith("D") ? figure : figure + " D";
        }
    }

    /**
     * What the page shows.
     *
     * @param form filled in so far
     * @param label as read; none before the scan
     * @param models to choose from
     * @param places to choose from
     * @param owners to choose from
     * @param likely the model of cartons with the same device identifier
     * @param refused why it was not taken in
     */
    public record Sheet(
            Form form,
            Optional<CartonLabel> label,
            List<Names.Choice> models,
            List<Names.Choice> places,
            List<Names.Choice> owners,
            String likely,
            List<Found> refused) {

        /** Whether the label says all that a carton needs. */
        public boolean isWhole() {
            return label.flatMap(CartonLabel::identity).isPresent();
        }
    }

    @GetMapping("/bank/in")
    String start(Model model) {
        model.addAttribute("sheet", sheet(Form.NOTHING, Optional.empty(), List.of()));
        return "goods-in";
    }

    /** One barcode more; what cannot be read whole leaves those before it as they were. */
    @PostMapping("/bank/in/label")
    String scan(@ModelAttribute Form form, @RequestParam String scan, HttpServletResponse response, Model model) {
        Form more = form.with(scan);
        try {
            model.addAttribute("sheet", sheet(more, Optional.of(bank.label(more.barcodes())), List.of()));
        } catch (Refusal unreadable) {
            response.setStatus(HttpStatus.UNPROCESSABLE_ENTITY.value());
            Optional<CartonLabel> before =
                    form.barcodes().isEmpty() ? Optional.empty() : Optional.of(bank.label(form.barcodes()));
            model.addAttribute("sheet", sheet(form, before, found(unreadable)));
        }
        return "goods-in :: content";
    }

    @PostMapping("/bank/in")
    String receive(@ModelAttribute Form form, HttpServletResponse response, Model model) {
        try {
            LensUnit unit = bank.receive(form.arrival());
            response.setHeader(
                    "HX-Push-Url", "/bank/carton/" + Names.id(unit.evidence().resource()));
            model.addAttribute("sheet", cartons.received(unit));
            return "carton :: content";
        } catch (Refusal refused) {
            response.setStatus(refused.status().value());
            model.addAttribute("sheet", sheet(form, Optional.of(bank.label(form.barcodes())), found(refused)));
            return "goods-in :: content";
        }
    }

    private static List<Found> found(Refusal refused) {
        return refused.findings().stream().map(Found::of).toList();
    }

    private Sheet sheet(Form form, Optional<CartonLabel> label, List<Found> refused) {
        Optional<StoreState> state = watch.known();
        List<LensUnit> units = state.map(each -> each.standing().units()).orElse(List.of());
        Optional<Names> names = state.map(maker::names);
        return new Sheet(
                form,
                label,
                names.map(Names::models).orElse(List.of()),
                names.map(Names::places).orElse(List.of()),
                names.map(each -> units.stream()
                                .map(unit -> unit.owner().name())
                                .distinct()
                                .map(owner -> new Names.Choice(owner, each.owner(owner)))
                                .toList())
                        .orElse(List.of()),
                label.map(each -> likely(each, units)).orElse(""),
                refused);
    }

    /** The one model that cartons of that device identifier have; nothing where they differ. */
    private static String likely(CartonLabel label, List<LensUnit> units) {
        List<String> models = units.stream()
                .filter(unit -> unit.identity().device().equals(label.device()))
                .map(LensUnit::model)
                .distinct()
                .toList();
        return models.size() == 1 ? models.get(0) : "";
    }
}
