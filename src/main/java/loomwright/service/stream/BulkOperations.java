package loomwright.service.stream;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import loomwright.service.endpoint.Calculation;
import loomwright.service.endpoint.Endpoint;
import loomwright.service.input.Contract;
import loomwright.service.input.ListInput;
import org.jspecify.annotations.Nullable;

/**
 * The operations that answer many lines: those that the contract names for {@code /v1/bulk/{operation}}, each by the last
 * word of its address.
 */
public final class BulkOperations {
    public static final String ID = "runBulk";
    static final String PARAMETER = "operation";

    private final Map<String, BulkOperation> byName;

    /**
     * One of them.
     *
     * @param calculation answers one line
     * @param rowCalculation answers one row; another where GET asks another question than POST
     * @param post the contract of an input in JSON
     * @param get the contract of an input in a row; absent if its input does not fit in one
     */
    public record BulkOperation(
            String name,
            Calculation<?, ?> calculation,
            Calculation<?, ?> rowCalculation,
            Contract.Operation post,
            Contract.@Nullable Operation get) {
        public Contract.Schema schema() {
            return Objects.requireNonNull(post.body());
        }
    }

    private BulkOperations(Map<String, BulkOperation> byName) {
        this.byName = byName;
    }

    public static BulkOperations of(Contract contract, List<Endpoint> single) {
        Map<String, BulkOperation> byName = new LinkedHashMap<>();
        Contract.Parameter names = contract.operation(ID).path(PARAMETER);
        if (names == null) {
            throw new IllegalStateException("the contract has no parameter " + PARAMETER);
        }
        names.form().path("enum").forEach(word -> {
            String name = word.asText();
            Endpoint post = find(single, Endpoint.Method.POST, name)
                    .orElseThrow(() -> new IllegalStateException("no operation " + name));
            Optional<Endpoint> row = find(single, Endpoint.Method.GET, name);
            byName.put(
                    name,
                    new BulkOperation(
                            name,
                            (Calculation<?, ?>) post.handler(),
                            (Calculation<?, ?>) row.orElse(post).handler(),
                            contract.operation(post.operationId()),
                            row.map(get -> contract.operation(get.operationId()))
                                    // A whole list in the address is no row: such a table is a list of cars.
                                    .filter(get -> get.query(ListInput.LIST) == null)
                                    .orElse(null)));
        });
        return new BulkOperations(byName);
    }

    private static Optional<Endpoint> find(List<Endpoint> single, Endpoint.Method method, String name) {
        return single.stream()
                .filter(endpoint -> endpoint.method() == method
                        && endpoint.path().endsWith("/" + name)
                        && endpoint.handler() instanceof Calculation)
                .findFirst();
    }

    public Set<String> names() {
        return byName.keySet();
    }

    public BulkOperation get(String name) {
        BulkOperation operation = byName.get(name);
        if (operation == null) {
            throw new IllegalArgumentException("no such operation: " + name);
        }
        return operation;
    }
}
